/**
 * What the archive teaches: shares, lifetimes, causes and money over many cases, and how well the judge's stated
 * probabilities came true.
 *
 * <p>{@code estimate} holds the estimators: pure arithmetic that knows no case, no database and no clock, each with its source
 * and its 95 % interval. Level 6: may import every room below it. Start reading at {@link
 * org.voltdocket.insight.estimate.KaplanMeier}.
 */
package org.voltdocket.insight;
