/**
 * The API of evidence; pages of the rule book, its editions, runs over all cases and the manual; the API of runs. Rule book and
 * manual need no sign-in. Start reading at {@code EvidenceApiController} and {@code RulebookPageController}.
 */
package org.voltdocket.assessment.web;
