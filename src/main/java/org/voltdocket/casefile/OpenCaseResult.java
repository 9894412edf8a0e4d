package org.voltdocket.casefile;

/**
 * Answer to opening a case.
 *
 * @param created false where the pair had a case already
 */
public record OpenCaseResult(boolean created, CaseReference ref) {}
