package org.voltdocket.returned.bench;

import java.time.Duration;

/**
 * A step with its numbers for one construction of battery.
 *
 * @param least how long it takes at least; zero for a step that is only ticked off
 * @param volts charging voltage, V; null where nothing is charged
 * @param timesI20 greatest charging current, or the discharge current, in multiples of I20 = C20/20; null where none
 * @param optional whether later steps may begin without it
 */
public record ProcedureStage(BenchStep step, Duration least, Double volts, Double timesI20, boolean optional) {

    /** Whether it is started and finished, by a person. */
    public boolean timed() {
        return step != BenchStep.REST && !least.isZero();
    }

    /** Current in A for a nominal capacity in Ah; null where the step has none or the capacity is not known. */
    public Double amperes(Double capacityAh) {
        return timesI20 == null || capacityAh == null ? null : timesI20 * capacityAh / 20;
    }
}
