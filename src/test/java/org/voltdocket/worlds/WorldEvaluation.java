package org.voltdocket.worlds;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.voltdocket.worlds.Assessor.Assessed;

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
 * --edition NAME     of the rule book, default the newest that is released
 * --fit              also fits the weights of evidence on all worlds but one and evaluates on that one, in rotation
 * --explain FAULT SEED   one case of the first world in full
 * </pre>
 */
public final class WorldEvaluation {

    /**
     * A case with what was said of it.
     *
     * @param kind whether the fault can be told from the evidence
     */
    record Outcome(WorldCase truth, Channels channels, Distinguishability.Kind kind, Assessed said) {

        /** Whether the fault can be told from none, and from others. */
        boolean observable() {
            return kind == Distinguishability.Kind.CLEAR;
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
    private String edition;
    private boolean fit;
    private String[] one;

    private WorldEvaluation(String[] arguments) {
        for (int i = 0; i < arguments.length; i++) {
            switch (arguments[i]) {
                case "--world" -> worlds.addAll(worlds(arguments[++i]));
                case "--seeds" -> seeds = Integer.parseInt(arguments[++i]);
                case "--from" -> from = Long.parseLong(arguments[++i]);
                case "--channels" -> channels.add(channels(arguments[++i]));
                case "--fault" -> faults.add(Fault.of(arguments[++i]));
                case "--edition" -> edition = arguments[++i];
                case "--fit" -> fit = true;
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
        Assessor assessor = new Assessor(evaluation.edition);
        if (evaluation.one != null) {
            evaluation.explain(assessor);
            return;
        }
        List<Outcome> outcomes = evaluation.run(assessor);
        String report = WorldReport.of(outcomes, assessor.edition());
        Path folder = Files.createDirectories(Path.of("target", "evaluation"));
        Files.writeString(folder.resolve("worlds.md"), report);
        Files.write(folder.resolve("worlds.csv"), CaseReport.lines(outcomes));
        System.out.println(report);
        if (evaluation.fit) {
            String fitted = WeightRotation.of(outcomes);
            Files.writeString(folder.resolve("worlds-fit.md"), fitted);
            System.out.println(fitted);
        }
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

    List<Outcome> run(Assessor assessor) {
        List<Outcome> outcomes = new ArrayList<>();
        for (World world : worlds) {
            for (Fault fault : faults) {
                for (long seed = from; seed < from + seeds; seed++) {
                    outcomes.addAll(assess(assessor, world, fault, seed, channels));
                }
            }
        }
        return outcomes;
    }

    /** One case, assessed from each set of channels. */
    static List<Outcome> assess(Assessor assessor, World world, Fault fault, long seed, List<Channels> channels) {
        WorldCase whole = CaseMaker.make(world, fault, seed);
        Distinguishability twins = new Distinguishability(world, whole);
        List<Outcome> outcomes = new ArrayList<>();
        for (Channels kept : channels) {
            WorldCase seen = whole.with(kept.of(whole.input()));
            outcomes.add(new Outcome(seen.withoutEvidence(), kept, twins.from(kept), assessor.assess(seen.input())));
        }
        return outcomes;
    }

    private void explain(Assessor assessor) {
        WorldCase whole = CaseMaker.make(worlds.get(0), Fault.of(one[0]), Long.parseLong(one[1]));
        WorldCase seen = whole.with(channels.get(0).of(whole.input()));
        System.out.println(CaseReport.explain(seen, assessor.assess(seen.input())));
    }
}
