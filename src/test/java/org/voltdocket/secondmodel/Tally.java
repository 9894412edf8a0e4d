package org.voltdocket.secondmodel;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;

/** Numbers gathered over judged cases. All shares are 0 to 1, NaN where nothing was counted. */
final class Tally {

    /** One judged case. */
    record Judged(Labelled truth, Assessment said, double[] regimeTime, double[] regimeTimeFromVoltage, double millis) {

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
            double[] time = voltageOnly ? j.regimeTimeFromVoltage : j.regimeTime;
            right += time[0];
            all += time[1];
        }
        return all == 0 ? Double.NaN : right / all;
    }

    List<Judged> withOffset() {
        return judged.stream().filter(j -> j.offset() != null).toList();
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

    /** Seconds named rightly and seconds counted, over the recordings of a case. */
    static double[] regimeTime(Labelled truth, Assessment said) {
        double right = 0;
        double all = 0;
        for (var item : truth.input().evidence()) {
            Reading reading = item.reading();
            if (!(reading instanceof Recording recording)) {
                continue;
            }
            double[] time = regimeTime(
                    recording, truth.regimes().get(item.id()), said.regimes().get(item.id()));
            right += time[0];
            all += time[1];
        }
        return new double[] {right, all};
    }

    static double[] regimeTime(Recording recording, Regime[] truth, List<RegimeSpan> spans) {
        double right = 0;
        double all = 0;
        int span = 0;
        double[] at = recording.timeS();
        for (int i = 0; i + 1 < at.length; i++) {
            if (truth[i] == null) {
                continue;
            }
            double dt = Math.min(5, at[i + 1] - at[i]);
            all += dt;
            while (spans != null && span + 1 < spans.size() && spans.get(span).to() <= at[i]) {
                span++;
            }
            if (spans != null && !spans.isEmpty() && spans.get(span).regime() == truth[i]) {
                right += dt;
            }
        }
        return new double[] {right, all};
    }
}
