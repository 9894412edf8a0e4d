package org.voltdocket.returned;

/**
 * Answer to booking a battery in.
 *
 * @param created false where it is booked in already and has no outcome yet
 */
public record ArrivalResult(boolean created, ReturnedBattery battery) {}
