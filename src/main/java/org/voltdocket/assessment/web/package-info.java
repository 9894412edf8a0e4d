/**
 * Pages of the rule book, its editions, runs over all cases and the manual; the API of runs. Rule book and manual need no sign-in.
 * Start reading at {@code RulebookPageController}.
 */
package org.voltdocket.assessment.web;
