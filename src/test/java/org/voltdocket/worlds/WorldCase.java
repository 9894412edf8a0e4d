package org.voltdocket.worlds;

import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Facts;

/**
 * A generated case with its truth.
 *
 * @param setup the car and its fault
 * @param input what the diagnosis sees
 * @param complete the facts with nothing missing
 * @param estimates true values by the name of the estimate; several where several recordings may be meant
 */
record WorldCase(
        String world,
        Fault fault,
        long seed,
        Setup setup,
        CaseInput input,
        Facts complete,
        Map<String, List<Double>> estimates) {

    Severity severity() {
        return Severity.of(setup.strength());
    }

    WorldCase with(CaseInput other) {
        return new WorldCase(world, fault, seed, setup, other, complete, estimates);
    }

    /** The same with all facts known. */
    WorldCase completed() {
        return with(new CaseInput(complete, input.history(), input.evidence()));
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
