/**
 * The list of cases as page ({@code /cases}) and JSON ({@code GET /api/v1/cases}). It stands above {@code casefile} because it
 * shows the state of the claim and the number of evidence items. Start reading at {@code CaseListPageController}.
 */
package org.voltdocket.dossier.list;
