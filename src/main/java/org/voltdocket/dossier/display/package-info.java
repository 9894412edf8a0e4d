/**
 * Immutable values that the templates of case and evidence show: an assessment with its causes and findings, a recording with
 * its channels, regimes and limits, and its summary table. No database and no web. Start reading at {@link
 * org.voltdocket.dossier.display.AssessmentDisplay}.
 */
package org.voltdocket.dossier.display;
