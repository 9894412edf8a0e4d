package org.voltdocket.assessment.rerun;

import java.util.Optional;

/**
 * Progress of a run.
 *
 * @param casesRead cases of the chunks that are done
 * @param casesPerSecond over the last minute while it runs, over the whole time once it has ended; 0 where nothing is
 *     done
 * @param secondsLeft at that rate; empty where no rate is known
 * @param casesChanged whose leaning or first cause changes
 * @param casesFailed that could not be judged
 */
public record RunProgress(
        int casesRead, double casesPerSecond, Optional<Double> secondsLeft, int casesChanged, int casesFailed) {}
