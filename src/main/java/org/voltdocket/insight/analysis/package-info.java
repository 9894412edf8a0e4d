/**
 * One analysis per topic, and the queries that they share.
 *
 * <p>{@link org.voltdocket.insight.analysis.EditionProposal} turns the audited outcomes into starting odds of a next edition.
 */
package org.voltdocket.insight.analysis;
