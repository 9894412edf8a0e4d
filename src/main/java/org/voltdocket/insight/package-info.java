/**
 * Statistics over many cases: shares, service lives, causes, costs, agreement of tests, and how well stated probabilities match
 * bench outcomes.
 *
 * <p>{@link org.voltdocket.insight.InsightService} runs one {@link org.voltdocket.insight.TopicAnalysis} per topic over the view
 * {@code insight_case} and lists the cases behind each number. {@code analysis} holds the topics, {@code estimate} the estimators,
 * each with its source and 95 % interval; {@code chart} draws; {@code web} shows pages, CSV and PNG. Start reading at {@link
 * org.voltdocket.insight.InsightService}.
 */
package org.voltdocket.insight;
