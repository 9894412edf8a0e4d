/**
 * Runs an edition of the rule book over the whole archive: as a trial, which changes nothing, or for good.
 *
 * <p>Durable work on PostgreSQL, shared by all nodes. A run covers the cases that are there when it starts; one opened
 * meanwhile is judged by the edition in force and is no part of it. The cases are cut into chunks; whoever works claims
 * one by its row lock, judges its cases one by one in transactions of their own, and marks it done in the transaction that
 * holds it. A node that dies gives its chunk back at once; what it had appended is recognised by its input, so that no case
 * is judged twice and none is left out. Start reading at {@link org.voltdocket.assessment.rerun.ReassessmentService} and {@link
 * org.voltdocket.assessment.rerun.ChunkWorker}.
 */
package org.voltdocket.assessment.rerun;
