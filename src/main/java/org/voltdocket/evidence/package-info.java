/**
 * What was brought to a case: received once, hashed, read or refused, and kept for good.
 *
 * <p>Offers {@link org.voltdocket.evidence.EvidenceIntake} (the way in), {@link org.voltdocket.evidence.EvidenceArchive} (the
 * way out: items, readings, original bytes, series for drawing), {@link org.voltdocket.evidence.DuplicateRecordings} (the same
 * recording found in other cases) and the events {@link org.voltdocket.evidence.EvidenceStoredEvent} and {@link
 * org.voltdocket.evidence.DuplicateRecordingFoundEvent}. Nothing kept is ever changed or removed; a refused file leaves a trail
 * entry and no evidence. May import {@code kernel}, {@code diagnosis}, {@code access}, {@code trail}, {@code ui} and
 * {@code casefile}. Inside: {@code RecordingReader} (CSV), {@code TestRecordReader} (JSON), {@code DocumentCheck},
 * {@code Store} (PostgreSQL). Start reading at {@link org.voltdocket.evidence.EvidenceIntake}.
 */
package org.voltdocket.evidence;
