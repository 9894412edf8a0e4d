package org.voltdocket.returned;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.quantity.Capacity;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;

/** Compares bench tests with the workshop's tests of the same battery. */
@Component
public class BenchComparison {

    private final EvidenceArchive archive;

    BenchComparison(EvidenceArchive archive) {
        this.archive = archive;
    }

    /**
     * One quantity as measured by workshop and bench.
     *
     * @param quantity {@code rest-voltage}, {@code cranking-current} or {@code internal-resistance}
     * @param workshop null where the workshop did not measure it
     * @param bench null where the bench did not
     * @param differencePct of the workshop's value from the bench's, per cent; null where one is missing
     */
    public record Pair(String quantity, String unit, Double workshop, Double bench, Double differencePct) {}

    /**
     * A capacity run.
     *
     * @param ampereHours taken until 10.50 V, brought to 25 °C, Ah
     * @param sharePct of the nominal capacity; null where that is not known
     * @param reached whether the voltage reached 10.50 V; otherwise the capacity is at least this much
     * @param celsius mean temperature; null where none was recorded and 25 °C was taken
     */
    public record Run(EvidenceItem item, double ampereHours, Double sharePct, boolean reached, Double celsius) {}

    /**
     * Tests and capacity runs.
     *
     * @param workshopTest the workshop's latest; null where there is none
     * @param benchTest the bench's latest; null where there is none
     */
    public record Results(BatteryTest workshopTest, BatteryTest benchTest, List<Pair> pairs, List<Run> runs) {

        public Results {
            pairs = List.copyOf(pairs);
            runs = List.copyOf(runs);
        }

        /** Serial of the workshop's instrument; a dash where it is not known. */
        public String workshopInstrument() {
            return serial(workshopTest);
        }

        /** Serial of the bench's instrument; a dash where it is not known. */
        public String benchInstrument() {
            return serial(benchTest);
        }

        private static String serial(BatteryTest test) {
            return test == null
                            || test.instrument() == null
                            || test.instrument().serial() == null
                    ? "–"
                    : test.instrument().serial();
        }
    }

    /** Empty lists where the battery has no case. */
    public Results of(ReturnedBattery battery) {
        Optional<BatteryTest> workshop = battery.file()
                .flatMap(ref -> lastTest(archive.ofCase(ref.id()).stream()
                        .filter(item -> item.origin() != Origin.BENCH)
                        .toList()));
        Optional<BatteryTest> bench = lastTest(battery.evidence());
        List<Run> runs = battery.evidence().stream()
                .filter(item -> item.kind() == EvidenceKind.DISCHARGE_RECORDING)
                .map(item -> run(battery, item))
                .toList();
        return new Results(workshop.orElse(null), bench.orElse(null), pairs(workshop, bench), runs);
    }

    private Optional<BatteryTest> lastTest(List<EvidenceItem> items) {
        return items.stream()
                .filter(item -> item.kind() == EvidenceKind.BATTERY_TEST)
                .flatMap(item -> archive.reading(item.id()).stream())
                .map(BatteryTest.class::cast)
                .max(Comparator.comparing(BatteryTest::takenAt, OffsetDateTime.timeLineOrder()));
    }

    private static List<Pair> pairs(Optional<BatteryTest> workshop, Optional<BatteryTest> bench) {
        List<Pair> pairs = new ArrayList<>();
        pairs.add(pair("rest-voltage", "V", workshop, bench, BatteryTest::restVoltageV));
        boolean comparable =
                workshop.map(BatteryTest::crankingStandard).equals(bench.map(BatteryTest::crankingStandard))
                        || workshop.isEmpty()
                        || bench.isEmpty();
        if (comparable) {
            pairs.add(pair("cranking-current", "A", workshop, bench, BatteryTest::crankingCurrentA));
        }
        pairs.add(pair("internal-resistance", "mΩ", workshop, bench, BatteryTest::internalResistanceMilliohm));
        pairs.removeIf(one -> one.workshop() == null && one.bench() == null);
        return pairs;
    }

    private static Pair pair(
            String quantity,
            String unit,
            Optional<BatteryTest> workshop,
            Optional<BatteryTest> bench,
            Function<BatteryTest, Double> value) {
        Double a = workshop.map(value).orElse(null);
        Double b = bench.map(value).orElse(null);
        return new Pair(quantity, unit, a, b, a == null || b == null || b == 0 ? null : 100 * (a - b) / b);
    }

    private Run run(ReturnedBattery battery, EvidenceItem item) {
        Recording recording = (Recording) archive.reading(item.id()).orElseThrow();
        double[] volts = wide(recording.channel(Channel.MEASURED_V), 1);
        double[] amperes = wide(recording.channel(Channel.MEASURED_A), -1);
        Double celsius = mean(recording.channel(Channel.AMBIENT));
        double taken =
                Capacity.at25(Capacity.ampereHours(recording.timeS(), volts, amperes), celsius == null ? 25 : celsius);
        Double nominal = battery.facts().capacityAh();
        boolean reached = false;
        for (double v : volts) {
            reached |= v <= Capacity.END_V;
        }
        return new Run(item, taken, nominal == null ? null : 100 * taken / nominal, reached, celsius);
    }

    private static Double mean(float[] values) {
        double sum = 0;
        int count = 0;
        for (int i = 0; values != null && i < values.length; i++) {
            if (!Float.isNaN(values[i])) {
                sum += values[i];
                count++;
            }
        }
        return count == 0 ? null : sum / count;
    }

    private static double[] wide(float[] values, double sign) {
        double[] out = new double[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = sign * values[i];
        }
        return out;
    }
}
