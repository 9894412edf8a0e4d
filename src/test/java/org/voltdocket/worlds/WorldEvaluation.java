package org.voltdocket.worlds;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.Assessor.Assessed;
import org.voltdocket.worlds.fit.ExpertWeights;
import org.voltdocket.worlds.fit.FittedEdition;
import org.voltdocket.worlds.fit.WeightFit;
import org.voltdocket.worlds.fit.WeightRotation;

/**
 * The command that assesses generated cases of the independent worlds. It prints a Markdown table and writes it with a list
 * of all cases to {@code target/evaluation}.
 *
 * <pre>
 * mvn -q test-compile exec:exec -Pevaluate -Devaluate="--world all --seeds 10 --channels all"
 *
 * --world NAME       ceraolo, ciemat, shepherd, or all; may be given again
 * --seeds N          seeds of each fault, default 10; a third of them are mild, a third moderate, a third severe
 * --from N           first seed, default 1
 * --channels NAME    all, reported (measured and reported voltage with marks) or voltage (measured voltage only); may be
 *                    given again, default all three
 * --fault NAME       one fault only; may be given again
 * --edition FILE     of the rule book, default the current edition
 * --tuned N          seeds 1 to N of each world are what the weights are fitted on, default 30; from their findings, which
 *                    are kept under target/evaluation/findings, the achievable accuracy is estimated
 * --fit              fits the weights on all worlds but one, in rotation, and on all of them; assesses nothing. Writes the
 *                    rule books to target/evaluation/without-WORLD.yaml and without-none.yaml
 * --left-out         assesses each world by the rule book that was fitted on the others
 * --explain FAULT SEED   one case of the first world in full
 * </pre>
 */
public final class WorldEvaluation {

    private static final Path FOLDER = Path.of("target", "evaluation");

    /**
     * A case with what was said of it.
     *
     * @param kind whether the fault can be told from the evidence by who knows all else
     * @param achievable probability of the true cause by weights fitted on other cases of the same world
     * @param completed the leaning once no fact is missing
     */
    record Outcome(
            WorldCase truth,
            Channels channels,
            Distinguishability.Kind kind,
            double achievable,
            Assessed said,
            Leaning completed) {

        /** Whether the fault can be told from none and from others, and the findings of such cases lead to it. */
        boolean observable() {
            return kind == Distinguishability.Kind.CLEAR && achievable >= 0.5;
        }

        boolean right() {
            return said.first() == truth.fault().cause();
        }
    }

    private final List<World> worlds = new ArrayList<>();
    private final List<Channels> channels = new ArrayList<>();
    private final List<Fault> faults = new ArrayList<>();
    private int seeds = 10;
    private long from = 1;
    private Rulebook book = Rulebook.current();
    private int tuned = 30;
    private boolean fit;
    private boolean leftOut;
    private String[] one;

    private WorldEvaluation(String[] arguments) {
        for (int i = 0; i < arguments.length; i++) {
            switch (arguments[i]) {
                case "--world" -> worlds.addAll(worlds(arguments[++i]));
                case "--seeds" -> seeds = Integer.parseInt(arguments[++i]);
                case "--from" -> from = Long.parseLong(arguments[++i]);
                case "--channels" -> channels.add(channels(arguments[++i]));
                case "--fault" -> faults.add(Fault.of(arguments[++i]));
                case "--edition" -> book = Editions.read(Path.of(arguments[++i]));
                case "--tuned" -> tuned = Integer.parseInt(arguments[++i]);
                case "--fit" -> fit = true;
                case "--left-out" -> leftOut = true;
                case "--explain" -> one = new String[] {arguments[++i], arguments[++i]};
                default ->
                    throw new IllegalArgumentException("Unknown option '" + arguments[i] + "'; see WorldEvaluation.");
            }
        }
        if (channels.isEmpty()) {
            channels.addAll(List.of(Channels.values()));
        }
        if (faults.isEmpty()) {
            faults.addAll(List.of(Fault.values()));
        }
    }

    /** Reads the arguments and runs. */
    public static void main(String[] arguments) throws IOException {
        WorldEvaluation evaluation = new WorldEvaluation(arguments);
        if (evaluation.one != null) {
            evaluation.explain();
        } else if (evaluation.fit) {
            evaluation.fit();
        } else {
            evaluation.report();
        }
    }

    private void report() throws IOException {
        List<Outcome> outcomes = run();
        WorldReport report = new WorldReport(outcomes, book.edition());
        Files.createDirectories(FOLDER);
        Files.writeString(FOLDER.resolve("worlds.md"), report.page());
        Files.write(FOLDER.resolve("worlds-counts.csv"), report.cells());
        Files.write(FOLDER.resolve("worlds.csv"), CaseReport.lines(outcomes));
        System.out.println(report.page());
    }

    private void fit() throws IOException {
        WeightRotation rotation = new WeightRotation(ExpertWeights.in(book), new FindingsCache(book, tuned).all());
        for (Map.Entry<String, WeightFit> fitted : rotation.fits().entrySet()) {
            Files.writeString(
                    fitted(fitted.getKey()),
                    FittedEdition.text(
                            Files.readString(Path.of("shared", "rulebook", book.edition() + ".yaml")),
                            fitted.getValue()));
        }
        Files.writeString(FOLDER.resolve("fit.md"), rotation.page());
        System.out.println(rotation.page());
    }

    private static Path fitted(String leftOut) {
        return FOLDER.resolve("without-" + leftOut + ".yaml");
    }

    private static List<World> worlds(String name) {
        List<World> found = World.all().stream()
                .filter(w -> name.equals("all") || w.name().equals(name))
                .toList();
        if (found.isEmpty()) {
            throw new IllegalArgumentException("No world '" + name + "'.");
        }
        return found;
    }

    private static Channels channels(String name) {
        return Arrays.stream(Channels.values())
                .filter(c -> c.id.equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("No channels '" + name + "'."));
    }

    private List<Outcome> run() {
        FindingsCache cache = new FindingsCache(book, tuned);
        List<Outcome> outcomes = new ArrayList<>();
        for (World world : worlds) {
            Assessor assessor = new Assessor(leftOut ? Editions.read(fitted(world.name())) : book);
            Achievable achievable = tuned > 0 ? new Achievable(book, cache, world) : null;
            for (Fault fault : faults) {
                for (long seed = from; seed < from + seeds; seed++) {
                    outcomes.addAll(assess(assessor, achievable, world, fault, seed, channels));
                }
            }
        }
        return outcomes;
    }

    /**
     * One case, assessed from each set of channels.
     *
     * @param achievable null where it is not estimated
     */
    static List<Outcome> assess(
            Assessor assessor, Achievable achievable, World world, Fault fault, long seed, List<Channels> channels) {
        WorldCase whole = CaseMaker.make(world, fault, seed);
        Distinguishability twins = new Distinguishability(world, whole);
        List<Outcome> outcomes = new ArrayList<>();
        for (Channels kept : channels) {
            WorldCase seen = whole.with(kept.of(whole.input()));
            double probability = achievable == null ? 1 : achievable.probability(seen, kept);
            outcomes.add(new Outcome(
                    seen.withoutEvidence(),
                    kept,
                    twins.from(kept),
                    probability,
                    assessor.assess(seen.input()),
                    assessor.assess(seen.completed().input()).leaning()));
        }
        return outcomes;
    }

    private void explain() {
        WorldCase whole = CaseMaker.make(worlds.get(0), Fault.of(one[0]), Long.parseLong(one[1]));
        WorldCase seen = whole.with(channels.get(0).of(whole.input()));
        System.out.println(CaseReport.explain(seen, new Assessor(book).assess(seen.input())));
    }
}
