package org.voltdocket.worlds;

import java.util.List;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.worlds.fit.ExpertWeights;
import org.voltdocket.worlds.fit.FitCase;
import org.voltdocket.worlds.fit.WeightFit;

/**
 * Estimates what accuracy can be achieved from the findings of a world: weights fitted with a small penalty on other cases of
 * the same world, which no diagnosis has. A case whose seed is among the fitted ones is estimated by a fit without its third
 * of the seeds.
 */
final class Achievable {

    private static final double PENALTY = 0.1;
    private static final int PARTS = 3;

    private final FindingsCache cache;
    private final int seeds;
    private final WeightFit[] without = new WeightFit[PARTS];

    Achievable(Rulebook book, FindingsCache cache, World world) {
        this.cache = cache;
        this.seeds = cache.seeds();
        Rulebook expert = ExpertWeights.in(book);
        List<FitCase> cases = cache.of(world);
        for (int part = 0; part < PARTS; part++) {
            int left = part;
            without[part] = WeightFit.on(
                    expert,
                    cases.stream().filter(one -> part(one.seed()) != left).toList(),
                    PENALTY);
        }
    }

    /** Parts are blocks of seeds, so that each has every severity. */
    private int part(long seed) {
        return (int) Math.min(PARTS - 1, (seed - 1) * PARTS / seeds);
    }

    /** Probability of the true cause. */
    double probability(WorldCase one, Channels channels) {
        WeightFit fit = without[one.seed() <= seeds ? part(one.seed()) : 0];
        return fit.probabilities(List.of(cache.found(one, channels)))
                .get(0)[one.fault().cause().ordinal()];
    }
}
