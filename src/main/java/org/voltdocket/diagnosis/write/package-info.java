/**
 * Writes assessments: as the JSON of the API and as text for a terminal. Start reading at
 * {@link org.voltdocket.diagnosis.write.AssessmentJson}.
 */
package org.voltdocket.diagnosis.write;
