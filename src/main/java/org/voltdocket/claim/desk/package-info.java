/**
 * The desk: claims listed, filtered, sorted and counted over one row each, which triggers keep ({@code V070__desk_claims.sql}).
 *
 * <p>{@link org.voltdocket.claim.desk.Desk} is the door; a {@link org.voltdocket.claim.desk.DeskFilter} is what stands in an
 * address. {@link org.voltdocket.claim.desk.BusinessCalendar} reckons working days, {@link
 * org.voltdocket.claim.desk.WorkingDays} keeps how many there are to decide or to answer.
 */
package org.voltdocket.claim.desk;
