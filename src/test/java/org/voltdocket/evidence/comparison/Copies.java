package org.voltdocket.evidence.comparison;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Made;
import org.voltdocket.diagnosis.Recording;

/** Recordings, and what people make of them who want them to look like others. */
final class Copies {

    private Copies() {}

    /** A drive with loads that come and go, made by chance: 20 min at 10 Hz, noise of 5 mV, hundredths of a volt. */
    static Recording drive(long seed) {
        Random chance = new Random(seed);
        int n = 12_000;
        double[] loads = Made.steps(chance, n, 0, 0.25, 40, 400);
        double[] noise = Made.noise(chance, n, 0.005, 0.3);
        return Made.at(10, 1199)
                .with(Channel.MEASURED_V, t -> {
                    int row = Math.min(n - 1, (int) Math.round(10 * t));
                    double level = t < 60 ? 12.5 : 13.9;
                    return Math.rint(100 * (level - loads[row] + noise[row])) / 100;
                })
                .recording();
    }

    /**
     * A drive on a given route: loads of the route that every vehicle has, and loads of its own.
     *
     * @param share size of its own loads relative to those of the route
     */
    static Recording onRoute(long route, long vehicle, double share) {
        int n = 12_000;
        double[] common = Made.steps(new Random(route), n, 0, 0.25, 40, 400);
        Random chance = new Random(7919 * vehicle + 13);
        double scale = 0.7 + 0.6 * chance.nextDouble();
        double[] own = Made.steps(chance, n, 0, 0.25 * share, 40, 400);
        double[] noise = Made.noise(chance, n, 0.005, 0.3);
        return Made.at(10, 1199)
                .with(Channel.MEASURED_V, t -> {
                    int row = Math.min(n - 1, (int) Math.round(10 * t));
                    double level = t < 60 ? 12.5 : 13.9;
                    return Math.rint(100 * (level - scale * common[row] - own[row] + noise[row])) / 100;
                })
                .recording();
    }

    /**
     * A copy.
     *
     * @param every takes a row at most so often, s
     * @param from cuts what lies before, s
     * @param to cuts what lies behind, s
     * @param round the last digit kept, V
     */
    static Recording of(Recording original, double every, double from, double to, double round) {
        double[] time = original.timeS();
        float[] volts = original.channel(Channel.MEASURED_V);
        double[] keptTime = new double[time.length];
        float[] kept = new float[time.length];
        int n = 0;
        double next = from;
        for (int i = 0; i < time.length && time[i] <= to; i++) {
            if (time[i] >= next && !Float.isNaN(volts[i])) {
                next = time[i] + every;
                keptTime[n] = time[i] - from;
                kept[n++] = (float) (Math.rint(volts[i] / round) * round);
            }
        }
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        channels.put(Channel.MEASURED_V, Arrays.copyOf(kept, n));
        return new Recording(original.kind(), null, Arrays.copyOf(keptTime, n), channels, List.of());
    }

    /** As the store does it: outlines as kept, votes by equal codes, the most alike scale. */
    static Optional<CurveSimilarity> alike(Recording one, Recording other) {
        Optional<CurveSimilarity> best = Optional.empty();
        for (VoltageOutline a : kept(one)) {
            for (VoltageOutline b : kept(other)) {
                Optional<CurveSimilarity> now =
                        a.scale() == b.scale() ? CurveSimilarity.of(a, b, votes(a, b)) : Optional.empty();
                best = now.isPresent()
                                && (best.isEmpty()
                                        || now.get().correlation() > best.get().correlation())
                        ? now
                        : best;
            }
        }
        return best;
    }

    static List<VoltageOutline> kept(Recording recording) {
        return VoltageOutline.of(recording).stream()
                .map(o -> VoltageOutline.unpacked(o.scale(), o.packed()))
                .toList();
    }

    static List<CurveSimilarity.Vote> votes(VoltageOutline a, VoltageOutline b) {
        Map<Integer, List<Integer>> places = new HashMap<>();
        Landmarks.of(b)
                .forEach(code -> places.computeIfAbsent(code.code(), x -> new ArrayList<>())
                        .add(code.step()));
        List<CurveSimilarity.Vote> votes = new ArrayList<>();
        Landmarks.of(a)
                .forEach(code -> places.getOrDefault(code.code(), List.of())
                        .forEach(step -> votes.add(new CurveSimilarity.Vote(code.step(), step))));
        return votes;
    }
}
