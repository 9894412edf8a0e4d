package org.voltdocket.secondmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.quantity.sensor.OffsetBound;

/** Numbers gathered over judged cases. All shares are 0 to 1, NaN where nothing was counted. */
final class Tally {

    /** One judged case. */
    record Judged(
            Labelled truth, Assessment said, double[][] regimeTime, double[][] regimeTimeFromVoltage, double millis) {

        Cause first() {
            return said.causes().get(0).cause();
        }

        double stated() {
            return said.causes().get(0).probability();
        }

        boolean right() {
            return first() == truth.cause();
        }

        boolean leansRight() {
            return truth.leanings().contains(said.leaning());
        }

        Assessment.Estimate offset() {
            return said.estimates().get("sensorOffsetA");
        }

        boolean offsetCovered() {
            return offset().low() <= truth.sensorOffsetA() && truth.sensorOffsetA() <= offset().high();
        }
    }

    final List<Judged> judged = new ArrayList<>();
    final List<String> failures = new ArrayList<>();

    double accuracy() {
        return share(judged.stream().filter(Judged::right).count(), judged.size());
    }

    /** Healthy cases that lean to the battery or the vehicle. */
    double healthyBlamed() {
        List<Judged> healthy =
                judged.stream().filter(j -> j.truth.cause() == Cause.NONE).toList();
        return share(
                healthy.stream()
                        .filter(j ->
                                j.said.leaning() == Leaning.BATTERY_SIDE || j.said.leaning() == Leaning.VEHICLE_SIDE)
                        .count(),
                healthy.size());
    }

    /** Vehicle faults that lean to the vehicle. */
    double vehicleFound() {
        List<Judged> faults = judged.stream()
                .filter(j -> j.truth.leanings().contains(Leaning.VEHICLE_SIDE))
                .toList();
        return share(
                faults.stream()
                        .filter(j -> j.said.leaning() == Leaning.VEHICLE_SIDE)
                        .count(),
                faults.size());
    }

    double leaningsRight() {
        return share(judged.stream().filter(Judged::leansRight).count(), judged.size());
    }

    /** Time whose regime was named rightly, of the time whose true regime can be called. */
    double regimesRight(boolean voltageOnly) {
        double right = 0;
        double all = 0;
        for (Judged j : judged) {
            double[] time = rightOfAll(voltageOnly ? j.regimeTimeFromVoltage : j.regimeTime);
            right += time[0];
            all += time[1];
        }
        return all == 0 ? Double.NaN : right / all;
    }

    /** Seconds of one true regime that were called another. */
    double seconds(boolean voltageOnly, Regime truth, Regime said) {
        return judged.stream()
                .map(j -> voltageOnly ? j.regimeTimeFromVoltage : j.regimeTime)
                .mapToDouble(t -> t[truth.ordinal()][said.ordinal()])
                .sum();
    }

    /** The part of one scenario. */
    Tally of(String scenario) {
        Tally part = new Tally();
        judged.stream().filter(j -> j.truth.scenario().equals(scenario)).forEach(part.judged::add);
        return part;
    }

    /** Mean probability given to the true cause. */
    double weightOfTruth() {
        return judged.stream()
                .mapToDouble(j -> j.said.causes().stream()
                        .filter(c -> c.cause() == j.truth.cause())
                        .mapToDouble(Assessment.RankedCause::probability)
                        .sum())
                .average()
                .orElse(Double.NaN);
    }

    double offsetError() {
        return withOffset().stream()
                .mapToDouble(j -> j.offset().value() - j.truth().sensorOffsetA())
                .average()
                .orElse(Double.NaN);
    }

    List<Judged> withOffset() {
        return judged.stream()
                .filter(j -> j.offset() != null && !Double.isNaN(j.truth().sensorOffsetA()))
                .toList();
    }

    double offsetCoverage() {
        return share(
                withOffset().stream().filter(Judged::offsetCovered).count(),
                withOffset().size());
    }

    double offsetWidth() {
        return withOffset().stream()
                .mapToDouble(j -> j.offset().high() - j.offset().low())
                .average()
                .orElse(Double.NaN);
    }

    /** Cases whose offset was found without a clamp, with the bound on its width. */
    List<Bounded> bounded() {
        List<Bounded> out = new ArrayList<>();
        for (Judged j : withOffset()) {
            List<Recording> drives = j.truth().input().evidence().stream()
                    .map(item -> item.reading())
                    .filter(reading -> reading.kind() == EvidenceKind.DRIVE_RECORDING)
                    .map(Recording.class::cast)
                    .toList();
            if (drives.size() == 1 && !drives.get(0).has(Channel.MEASURED_A)) {
                Facts facts = j.truth().input().facts();
                double offset = j.truth().sensorOffsetA();
                OffsetBound.of(drives.get(0), facts, offset).ifPresent(bound -> out.add(new Bounded(j, bound)));
            }
        }
        return out;
    }

    /** A case and the bound on the width of its offset. */
    record Bounded(Judged judged, OffsetBound bound) {

        double width() {
            return judged.offset().high() - judged.offset().low();
        }
    }

    /** Mean squared difference of the first cause's probability and whether it was right. */
    double brier() {
        return judged.stream()
                .mapToDouble(j -> Math.pow(j.stated() - (j.right() ? 1 : 0), 2))
                .average()
                .orElse(Double.NaN);
    }

    double millis() {
        return judged.stream().mapToDouble(Judged::millis).average().orElse(Double.NaN);
    }

    /** Counts of first causes by scenario. */
    Map<String, Map<Cause, Integer>> confusion() {
        Map<String, Map<Cause, Integer>> table = new TreeMap<>();
        judged.forEach(j ->
                table.computeIfAbsent(j.truth.scenario(), k -> new TreeMap<>()).merge(j.first(), 1, Integer::sum));
        return table;
    }

    private static double share(long part, int whole) {
        return whole == 0 ? Double.NaN : (double) part / whole;
    }

    /** Seconds named rightly and seconds counted. */
    static double[] rightOfAll(double[][] seconds) {
        double right = 0;
        double all = 0;
        for (int truth = 0; truth < seconds.length; truth++) {
            for (int said = 0; said < seconds.length; said++) {
                all += seconds[truth][said];
                right += truth == said ? seconds[truth][said] : 0;
            }
        }
        return new double[] {right, all};
    }

    /** Seconds by true regime and regime said, over the recordings of a case with an engine in them. */
    static double[][] regimeTime(Labelled truth, Assessment said) {
        int n = Regime.values().length;
        double[][] seconds = new double[n][n];
        for (var item : truth.input().evidence()) {
            Reading reading = item.reading();
            if (!(reading instanceof Recording recording) || !engine(reading.kind())) {
                continue;
            }
            double[][] time = regimeTime(
                    recording, truth.regimes().get(item.id()), said.regimes().get(item.id()));
            for (int t = 0; t < n; t++) {
                for (int s = 0; s < n; s++) {
                    seconds[t][s] += time[t][s];
                }
            }
        }
        return seconds;
    }

    /** A night or a bench has one regime and would drown the others. */
    private static boolean engine(EvidenceKind kind) {
        return kind == EvidenceKind.DRIVE_RECORDING || kind == EvidenceKind.CRANKING_RECORDING;
    }

    static double[][] regimeTime(Recording recording, Regime[] truth, List<RegimeSpan> spans) {
        double[][] seconds = new double[Regime.values().length][Regime.values().length];
        int span = 0;
        double[] at = recording.timeS();
        for (int i = 0; i + 1 < at.length; i++) {
            if (truth[i] == null) {
                continue;
            }
            double dt = Math.min(5, at[i + 1] - at[i]);
            while (spans != null && span + 1 < spans.size() && spans.get(span).to() <= at[i]) {
                span++;
            }
            boolean told = spans != null && !spans.isEmpty();
            Regime called = told ? spans.get(span).regime() : Regime.UNKNOWN;
            seconds[truth[i].ordinal()][called.ordinal()] += dt;
        }
        return seconds;
    }
}
