package org.voltdocket.returned;

/**
 * The result of registering a battery.
 *
 * @param created false where it is registered already and has no outcome yet
 */
public record ArrivalResult(boolean created, ReturnedBattery battery) {}
