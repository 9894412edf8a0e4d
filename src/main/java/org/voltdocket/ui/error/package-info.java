/**
 * Maps exceptions to problem details (RFC 9457) and to error pages.
 *
 * <p>{@link org.voltdocket.ui.error.ProblemDetails} builds the answer; titles are in {@code messages/problem-titles.properties}.
 */
package org.voltdocket.ui.error;
