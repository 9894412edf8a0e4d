package org.voltdocket.catalogue;

import java.time.YearMonth;

/**
 * Batteries of a batch that were sold in a calendar month.
 *
 * @param type code of the battery type
 */
public record SoldMonth(String type, String batch, YearMonth month, int sold) {}
