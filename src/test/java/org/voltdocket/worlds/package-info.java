/**
 * Independent simulated worlds for evaluating the diagnosis, and the command that does it.
 *
 * <p>Each world has its own battery model from the literature, alternator, charge controllers, drive cycles, logger and
 * workshop instruments, in a package of its own. They share the list of faults, the circuit that connects the parts, and the
 * value types that the diagnosis takes; they use nothing of the demo's generator or of {@code secondmodel}. Everything is
 * seeded. Ranges of vehicles and faults are invented; equations name their source. Start reading at {@code World};
 * {@code WorldEvaluation} is the command, and {@code Assessor} the only class that calls the diagnosis.
 */
package org.voltdocket.worlds;
