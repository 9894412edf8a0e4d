package org.voltdocket.diagnosis.assess;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.voltdocket.diagnosis.Assessment.RegimeSpan;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.cause.Contradictions;
import org.voltdocket.diagnosis.quantity.DriveSignals;
import org.voltdocket.diagnosis.quantity.FactQuantities;
import org.voltdocket.diagnosis.quantity.Measurement;
import org.voltdocket.diagnosis.quantity.MeasurementContext;
import org.voltdocket.diagnosis.quantity.RestAfterCharging;
import org.voltdocket.diagnosis.quantity.TestQuantities;
import org.voltdocket.diagnosis.quantity.bench.BenchQuantities;
import org.voltdocket.diagnosis.quantity.drive.DriveQuantities;
import org.voltdocket.diagnosis.quantity.sensor.OffsetAgreement;
import org.voltdocket.diagnosis.quantity.standing.StandingQuantities;
import org.voltdocket.kernel.Interval;

/** Measures all quantities of a case, in canonical order. */
final class CaseMeasurements {

    /** Estimates and their units, in the order they are shown. */
    static final Map<String, String> UNITS = units();

    final List<Evidence> evidence;
    final Map<String, Interval> estimates = new LinkedHashMap<>();
    final Map<String, List<RegimeSpan>> regimes = new TreeMap<>();
    private final CaseInput input;
    private final List<Measurement> recorded = new ArrayList<>();
    private final Map<Evidence, DriveSignals> drives = new LinkedHashMap<>();

    CaseMeasurements(CaseInput input) {
        this.input = input;
        this.evidence = input.evidence().stream()
                .sorted(Comparator.comparing((Evidence e) -> e.reading().kind()).thenComparing(Evidence::sha256))
                .toList();
        MeasurementContext context = new MeasurementContext(input.facts(), testTemperature());
        boolean charged = tests(input.facts()).judged();
        for (Evidence item : evidence) {
            if (item.reading() instanceof Recording recording && recording.rows() > 1) {
                read(item, recording, context, charged);
            }
        }
        recorded.addAll(BenchQuantities.runs(evidence));
        recorded.addAll(OffsetAgreement.across(List.copyOf(recorded)));
        recorded.addAll(RestAfterCharging.of(evidence, drives));
    }

    /** What the test records measure, given these facts. */
    TestQuantities tests(Facts facts) {
        return TestQuantities.of(evidence, new MeasurementContext(facts, testTemperature()));
    }

    /** All measurements: those of the recordings as they are, those of tests and facts given these facts. */
    List<Measurement> given(Facts facts, TestQuantities tests) {
        List<Measurement> out = new ArrayList<>(tests.measurements());
        out.addAll(recorded);
        out.addAll(FactQuantities.of(facts, input.history(), newestDay()));
        return out;
    }

    private void read(Evidence item, Recording recording, MeasurementContext context, boolean charged) {
        switch (recording.kind()) {
            case STANDING_RECORDING -> {
                StandingQuantities standing = StandingQuantities.of(item, context);
                recorded.addAll(standing.measurements());
                keep(standing.estimates());
                regimes.put(item.id(), standing.regimes());
            }
            case CRANKING_RECORDING -> {
                recorded.addAll(BenchQuantities.cranking(item, context, charged));
                recorded.addAll(BenchQuantities.course(item, context));
                regimes.put(item.id(), BenchQuantities.crankingRegimes(recording));
            }
            case DISCHARGE_RECORDING -> {
                recorded.addAll(BenchQuantities.run(item, context));
                regimes.put(item.id(), BenchQuantities.dischargeRegimes(recording));
            }
            default -> {
                DriveQuantities drive = DriveQuantities.of(item, context);
                drives.put(item, drive.signals());
                recorded.addAll(drive.measurements());
                keep(drive.estimates());
                regimes.put(item.id(), drive.regimes());
            }
        }
    }

    /** Of two estimates of one name the narrower stays. */
    private void keep(Map<String, Interval> more) {
        more.forEach((name, value) ->
                estimates.merge(name, value, (a, b) -> b.high() - b.low() < a.high() - a.low() ? b : a));
    }

    private double testTemperature() {
        double sum = 0;
        int n = 0;
        for (Evidence item : evidence) {
            double celsius = item.reading() instanceof BatteryTest b
                    ? b.temperatureC()
                    : item.reading() instanceof CrankingTest c ? c.temperatureC() : Double.NaN;
            if (!Double.isNaN(celsius)) {
                sum += celsius;
                n++;
            }
        }
        return n == 0 ? Double.NaN : sum / n;
    }

    LocalDate newestDay() {
        return evidence.stream()
                .map(Contradictions::day)
                .filter(Objects::nonNull)
                .max(Comparator.naturalOrder())
                .orElse(null);
    }

    private static Map<String, String> units() {
        Map<String, String> units = new LinkedHashMap<>();
        units.put("sensorOffsetA", "A");
        units.put("sensorGain", "ratio");
        units.put("voltageDisagreementV", "V");
        units.put("voltageGain", "ratio");
        units.put("harnessResistanceMilliohm", "mΩ");
        units.put("internalResistanceMilliohm", "mΩ");
        units.put("socStartPct", "%");
        units.put("socEndPct", "%");
        units.put("netChargeAh", "Ah");
        units.put("standingDrainA", "A");
        return units;
    }
}
