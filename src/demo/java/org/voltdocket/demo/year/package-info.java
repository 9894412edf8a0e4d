/**
 * A whole invented year of one distributor on the Skerrivan islands, as input for the statistics: two
 * suppliers, five types, twelve workshops, three thousand cases. It contains three problems that the statistics must find: one batch of
 * batteries, one instrument, and one workshop that replaces batteries without testing them. Start reading at {@link
 * org.voltdocket.demo.year.YearPlan}, which is pure: the same day gives the same year.
 */
package org.voltdocket.demo.year;
