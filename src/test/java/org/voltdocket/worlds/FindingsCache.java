package org.voltdocket.worlds;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.fit.FitCase;
import org.voltdocket.worlds.fit.WeightProbe;

/**
 * What the rules found in the cases that the weights are fitted on, kept in a file for each world so that a fit simulates
 * nothing. A file holds for the limits and measurements it was written with: delete the folder after changing them.
 */
final class FindingsCache {

    private static final Path FOLDER = Path.of("target", "evaluation", "findings");

    private final WeightProbe probe;
    private final int seeds;

    /**
     * @param seeds of each fault, from 1
     */
    FindingsCache(Rulebook book, int seeds) {
        this.probe = new WeightProbe(book);
        this.seeds = seeds;
    }

    int seeds() {
        return seeds;
    }

    /** Cases of all worlds. */
    List<FitCase> all() {
        return World.all().stream().flatMap(world -> of(world).stream()).toList();
    }

    List<FitCase> of(World world) {
        Path file = FOLDER.resolve(world.name() + "-" + seeds + ".tsv");
        try {
            if (!Files.exists(file)) {
                Files.createDirectories(FOLDER);
                Files.write(file, made(world).stream().map(FitCase::line).toList());
            }
            return Files.readAllLines(file).stream().map(FitCase::of).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<FitCase> made(World world) {
        List<FitCase> cases = new ArrayList<>();
        for (Fault fault : Fault.values()) {
            for (long seed = 1; seed <= seeds; seed++) {
                WorldCase whole = CaseMaker.make(world, fault, seed);
                Arrays.stream(Channels.values())
                        .forEach(kept -> cases.add(found(whole.with(kept.of(whole.input())), kept)));
            }
        }
        return cases;
    }

    /** What the rules find in a case. */
    FitCase found(WorldCase one, Channels channels) {
        return new FitCase(
                one.world(),
                channels.id,
                one.fault().id(),
                one.seed(),
                one.fault().cause(),
                probe.looks(Assessor.asUploaded(one.input())));
    }
}
