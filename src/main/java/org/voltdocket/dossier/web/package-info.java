/** The API of cases and evidence: {@code /api/v1/cases} and {@code /api/v1/evidence}. Start reading at {@code CaseApi}. */
package org.voltdocket.dossier.web;
