package org.voltdocket.secondmodel;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.kernel.Sha256;

/** One hour of a drive at 10 Hz in eight channels, with gaps, spikes and polled channels. */
public final class HourDrive {

    private static final int ROWS = 36_000;

    private HourDrive() {}

    /**
     * @param clamp whether the current was measured too; without it the ambient temperature is the eighth channel
     */
    public static Recording recording(boolean clamp) {
        return recording(clamp, 11);
    }

    /** @throws IllegalStateException where chance made the drive too short: take another seed */
    public static Recording recording(boolean clamp, long seed) {
        Random chance = new Random(seed);
        Garage garage = new Garage(Scenario.HEALTHY_MANAGED, chance);
        Workshop workshop = new Workshop(garage);
        Trace trace = workshop.vehicle(garage.charge, garage.heaviness)
                .run(DriveCycle.trips(chance, 2, 2000, true, workshop.crankS(garage.charge)), 0.5);
        Set<Channel> bus = EnumSet.of(
                Channel.REPORTED_V,
                Channel.REPORTED_A,
                Channel.REPORTED_SOC,
                Channel.ENGINE_RPM,
                Channel.SPEED,
                Channel.COOLANT);
        Recording whole = new Recorder(chance, garage.ambientC)
                .take(trace, EvidenceKind.DRIVE_RECORDING, null, 0, 10, clamp, bus, true)
                .recording();
        if (whole.rows() < ROWS) {
            throw new IllegalStateException("the drive is shorter than an hour: " + whole.durationS() + " s");
        }
        Map<Channel, float[]> channels = new EnumMap<>(Channel.class);
        for (Channel channel : Channel.values()) {
            boolean wanted = whole.has(channel) && !(clamp && channel == Channel.AMBIENT);
            if (wanted) {
                channels.put(channel, Arrays.copyOf(whole.channel(channel), ROWS));
            }
        }
        return new Recording(whole.kind(), null, Arrays.copyOf(whole.timeS(), ROWS), channels, List.of());
    }

    /** A case with the facts and workshop tests of the second model and this recording. */
    public static CaseInput in(Recording recording) {
        CaseInput made = new SecondModel()
                .make(Scenario.HEALTHY_MANAGED.id, 11)
                .input();
        List<Evidence> evidence = new ArrayList<>(made.evidence());
        evidence.removeIf(item -> item.reading() instanceof Recording);
        evidence.add(new Evidence("hour", Sha256.of(new byte[] {1}), Origin.WORKSHOP, recording));
        return new CaseInput(made.facts(), made.history(), evidence);
    }

    /** As a logger writes it: whole numbers as such, all else with three decimals, a blank where nothing was sampled. */
    public static byte[] csv(Recording recording) {
        List<Channel> channels =
                Arrays.stream(Channel.values()).filter(recording::has).toList();
        StringBuilder text = new StringBuilder("time_s");
        channels.forEach(channel -> text.append(',').append(channel.id()));
        for (int row = 0; row < recording.rows(); row++) {
            text.append(String.format(Locale.ROOT, "%n%.3f", recording.timeS()[row]));
            for (Channel channel : channels) {
                text.append(',').append(cell(recording.channel(channel)[row]));
            }
        }
        return text.append('\n').toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static String cell(float value) {
        if (Float.isNaN(value)) {
            return "";
        }
        return value == Math.rint(value) ? Integer.toString((int) value) : String.format(Locale.ROOT, "%.3f", value);
    }

    /** Bytes of the columns of a recording. */
    public static long columnBytes(Recording recording) {
        long channels =
                Arrays.stream(Channel.values()).filter(recording::has).count();
        return recording.rows() * (Double.BYTES + channels * Float.BYTES);
    }

    /** The text of so many different drives. */
    public static List<byte[]> files(int wanted) {
        List<byte[]> drives = new ArrayList<>();
        for (long seed = 100; drives.size() < wanted; seed++) {
            try {
                drives.add(csv(recording(true, seed)));
            } catch (IllegalStateException tooShort) {
                continue;
            }
        }
        return drives;
    }
}
