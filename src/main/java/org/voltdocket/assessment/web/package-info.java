/**
 * Pages that show the rule book in force and the manual: what the words mean, how tests are taken, what problems say.
 *
 * <p>Public: they need no sign-in. Templates lie under {@code templates/assessment} and {@code templates/manual}. Start
 * reading at {@link org.voltdocket.assessment.web.RulebookPageController}.
 */
package org.voltdocket.assessment.web;
