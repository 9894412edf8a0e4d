/**
 * Runs an edition of the rule book over all cases: as a trial, which changes nothing, or for good.
 *
 * <p>All nodes share the work through PostgreSQL. A run covers the cases that exist when it starts, in chunks. A worker claims a
 * chunk by its row lock, assesses its cases in transactions of their own, and marks it done in the transaction that holds the
 * lock. The chunk of a node that crashes is free at once; what the node had appended is recognised by its input, so that no case is
 * assessed twice or left out. Start reading at {@link org.voltdocket.assessment.rerun.ReassessmentService} and {@code ChunkWorker}.
 */
package org.voltdocket.assessment.rerun;
