/**
 * A whole invented year of one distributor on the Skerrivan islands, so that the statistics have something to show: two
 * suppliers, five types, twelve workshops, three thousand cases. Three things are wrong in it and have to be seen: one batch of
 * batteries, one instrument, and one workshop that replaces batteries without testing them. Start reading at {@link
 * org.voltdocket.demo.year.YearPlan}, which is pure: the same day gives the same year.
 */
package org.voltdocket.demo.year;
