/**
 * The desk: claims listed, filtered, sorted and counted over one row each, which triggers keep ({@code V054__claim_list.sql}).
 *
 * <p>{@link org.voltdocket.desk.DeskService} is the door; a {@link org.voltdocket.desk.DeskFilter} is what stands in an
 * address. {@link org.voltdocket.desk.deadline.BusinessCalendar} reckons working days, {@link
 * org.voltdocket.desk.deadline.WorkingDayService} keeps how many there are to decide or to answer.
 */
package org.voltdocket.desk;
