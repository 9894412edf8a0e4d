package org.voltdocket.worlds;

import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.CaseInput;

/**
 * A generated case with its truth.
 *
 * @param setup the car and its fault
 * @param input what the diagnosis sees
 * @param estimates true values by the name of the estimate; several where several recordings may be meant
 */
record WorldCase(
        String world, Fault fault, long seed, Setup setup, CaseInput input, Map<String, List<Double>> estimates) {

    Severity severity() {
        return Severity.of(setup.strength());
    }

    WorldCase with(CaseInput other) {
        return new WorldCase(world, fault, seed, setup, other, estimates);
    }

    /** The same without what fills the memory. */
    WorldCase withoutEvidence() {
        return with(new CaseInput(input.facts(), input.history(), List.of()));
    }

    @Override
    public String toString() {
        return world + " " + fault.id() + " " + seed;
    }
}
