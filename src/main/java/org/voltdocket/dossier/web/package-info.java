/**
 * Pages and API of a case and its documents ({@code /cases/{number}} and the same below {@code /api/v1}), and the forms of its
 * page: upload, claim, evidence request, objection. The controllers of these forms are here and not in {@code claim.web}, because
 * a refused form shows the whole case again with the message, and {@code CasePageModel} assembles it. Start reading at {@code
 * CasePageController} and {@code CaseApiController}.
 */
package org.voltdocket.dossier.web;
