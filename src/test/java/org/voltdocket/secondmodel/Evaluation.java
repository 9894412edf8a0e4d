package org.voltdocket.secondmodel;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Corpus;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.WorldEvaluation;

/**
 * The command that judges generated cases and writes what came out to {@code target/evaluation}.
 *
 * <pre>
 * mvn -q test-compile exec:exec -Pevaluate -Devaluate="--seeds 31"
 *
 * --edition NAME        of the rule book, default the newest that is released
 * --seeds N             seeds per scenario, default 8
 * --from N              first seed, default 1
 * --scenario NAME       one scenario only; may be given again
 * --source CLASS        another CaseSource with a public constructor; {@code demo} for the demo's generator
 * --measured-voltage-only   strips every other channel
 * --no-voltage-pass     leaves out the second judging from measured_v alone (twice as fast)
 * --explain SCENARIO SEED   one case in full
 * --plot SCENARIO SEED      its recordings as PNG
 * --world NAME          cases of the independent worlds instead; its options: {@link WorldEvaluation}
 * </pre>
 */
public final class Evaluation {

    private final CaseSource source;
    private final Rulebook rulebook;
    private final boolean voltagePass;
    private final boolean voltageOnly;

    Evaluation(CaseSource source, Rulebook rulebook, boolean voltageOnly, boolean voltagePass) {
        this.source = source;
        this.rulebook = rulebook;
        this.voltageOnly = voltageOnly;
        this.voltagePass = voltagePass;
    }

    /** Reads the arguments and runs. */
    public static void main(String[] args) throws Exception {
        if (List.of(args).contains("--world")) {
            WorldEvaluation.main(args);
            return;
        }
        CaseSource source = new SecondModel();
        List<String> scenarios = new ArrayList<>();
        int seeds = 8;
        long from = 1;
        boolean voltageOnly = false;
        boolean voltagePass = true;
        Rulebook rulebook = rulebook();
        String[] one = null;
        boolean plot = false;
        for (int i = 0; i < args.length; i++) {
            switch (args[i]) {
                case "--edition" -> rulebook = Editions.of(args[++i]);
                case "--seeds" -> seeds = Integer.parseInt(args[++i]);
                case "--from" -> from = Long.parseLong(args[++i]);
                case "--scenario" -> scenarios.add(args[++i]);
                case "--source" -> source = source(args[++i]);
                case "--measured-voltage-only" -> voltageOnly = true;
                case "--no-voltage-pass" -> voltagePass = false;
                case "--explain", "--plot" -> {
                    plot = args[i].equals("--plot");
                    one = new String[] {args[++i], args[++i]};
                }
                default -> throw new IllegalArgumentException("Unknown option '" + args[i] + "'; see Evaluation.");
            }
        }
        Path out = Files.createDirectories(Path.of("target", "evaluation"));
        if (plot) {
            plot(source.make(one[0], Long.parseLong(one[1])), out);
            return;
        }
        Evaluation evaluation = new Evaluation(source, rulebook, voltageOnly, voltagePass);
        if (one != null) {
            System.out.println(evaluation.explain(one[0], Long.parseLong(one[1])));
            return;
        }
        Tally tally = evaluation.run(scenarios.isEmpty() ? source.scenarios() : scenarios, from, seeds);
        String report = Report.write(tally, out);
        System.out.println(report);
    }

    private static CaseSource source(String name) throws ReflectiveOperationException {
        return name.equals("demo")
                ? new DemoCases()
                : (CaseSource) Class.forName(name).getDeclaredConstructor().newInstance();
    }

    /** The newest edition that is released. */
    static Rulebook rulebook() {
        return Editions.all().stream()
                .filter(Rulebook::released)
                .reduce((older, newer) -> newer)
                .orElseThrow();
    }

    /** Judges seeds {@code from} to {@code from + seeds − 1} of every scenario. A case that fails is counted. */
    Tally run(List<String> scenarios, long from, int seeds) {
        Tally tally = new Tally();
        for (long seed = from; seed < from + seeds; seed++) {
            for (String scenario : scenarios) {
                try {
                    tally.judged.add(judge(source.make(scenario, seed)));
                } catch (RuntimeException e) {
                    tally.failures.add(scenario + " " + seed + ": " + e + place(e));
                }
            }
        }
        return tally;
    }

    private static String place(RuntimeException e) {
        return e.getStackTrace().length == 0 ? "" : " at " + e.getStackTrace()[0];
    }

    private Tally.Judged judge(Labelled whole) {
        Labelled truth = voltageOnly ? measuredVoltageOnly(whole) : whole;
        long start = System.nanoTime();
        Assessment said = Diagnosis.assess(truth.input(), rulebook);
        double millis = (System.nanoTime() - start) / 1e6;
        double[][] bare = new double[Regime.values().length][Regime.values().length];
        if (voltagePass) {
            Labelled stripped = measuredVoltageOnly(whole);
            bare = Tally.regimeTime(stripped, Diagnosis.assess(stripped.input(), rulebook));
        }
        return new Tally.Judged(truth, said, Tally.regimeTime(truth, said), bare, millis);
    }

    private String explain(String scenario, long seed) {
        Labelled truth = source.make(scenario, seed);
        Labelled seen = voltageOnly ? measuredVoltageOnly(truth) : truth;
        return Explain.of(seen, Diagnosis.assess(seen.input(), rulebook));
    }

    private static void plot(Labelled truth, Path out) throws IOException {
        for (Evidence item : truth.input().evidence()) {
            if (item.reading() instanceof Recording recording) {
                File png = out.resolve(item.id() + "-" + recording.kind().id() + ".png")
                        .toFile();
                Plots.recording(recording, truth.regimes().get(item.id()), item.id(), png);
                System.out.println(png);
            } else {
                System.out.println(item.reading());
            }
        }
        System.out.println(truth.input().facts());
        System.out.printf(
                "offset %.2f A, charge %.2f to %.2f%n", truth.sensorOffsetA(), truth.socStart(), truth.socEnd());
    }

    /** The same case with no channel but {@code measured_v} in its drive, standing and cranking recordings. */
    static Labelled measuredVoltageOnly(Labelled whole) {
        CaseInput input = Corpus.measuredVoltageOnly(whole.input());
        return new Labelled(
                whole.scenario(),
                whole.seed(),
                input,
                whole.cause(),
                whole.leanings(),
                whole.sensorOffsetA(),
                whole.socStart(),
                whole.socEnd(),
                whole.regimes());
    }
}
