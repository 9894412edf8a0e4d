/**
 * Evidence of a case: received once, hashed, read or rejected, and stored for good.
 *
 * <p>API: {@link org.voltdocket.evidence.EvidenceIntake} stores files, {@link org.voltdocket.evidence.EvidenceArchive} returns
 * items, readings and original bytes, {@link org.voltdocket.evidence.SeriesService} draws recordings, {@link
 * org.voltdocket.evidence.DuplicateRecordings} finds the same recording in other cases. {@link
 * org.voltdocket.evidence.EvidenceStoredEvent} and {@link org.voltdocket.evidence.DuplicateRecordingFoundEvent} notify packages of
 * a higher level. Stored evidence is never changed; a rejected file leaves only an entry in the trail. Subpackages: {@code intake},
 * {@code storage}, {@code original}, {@code comparison}, {@code series}, {@code web}. Start reading at {@code intake.DefaultEvidenceIntake}.
 */
package org.voltdocket.evidence;
