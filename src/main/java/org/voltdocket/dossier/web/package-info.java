/**
 * The dossier shown: the API of cases and evidence ({@code /api/v1/cases}, {@code /api/v1/evidence}; start reading at
 * {@code CaseApi}) and the pages of cases ({@code /cases}; start reading at {@code CasePageController}).
 */
package org.voltdocket.dossier.web;
