/**
 * A case as a printed report: the assessment and its reasons, with every number, limit, source and digest, so that it can be
 * read and checked without the server.
 *
 * <p>Offers {@link org.voltdocket.dossier.report.CaseReport}. Each part of the report is a class of its own, called in
 * the order of reading; the layout comes from package {@code paper}. Start reading at
 * {@link org.voltdocket.dossier.report.CaseReport}.
 */
package org.voltdocket.dossier.report;
