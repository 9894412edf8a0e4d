/**
 * Pages and API of a case, its evidence, its claim and its documents ({@code /cases/{number}}, {@code /evidence/{id}} and the
 * same below {@code /api/v1}). Start reading at {@code CasePageController} and {@code CaseApiController}.
 */
package org.voltdocket.dossier.web;
