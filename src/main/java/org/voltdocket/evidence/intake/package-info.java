/** Receives uploads: spools the file, computes its digest, reads it and stores it. Start reading at {@code DefaultEvidenceIntake}. */
package org.voltdocket.evidence.intake;
