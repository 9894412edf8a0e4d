/** Working days, holidays and the due dates of claims that follow from them. Start reading at {@link org.voltdocket.desk.deadline.WorkingDayService}. */
package org.voltdocket.desk.deadline;
