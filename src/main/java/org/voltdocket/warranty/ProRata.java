package org.voltdocket.warranty;

import java.math.BigDecimal;

/**
 * A row of a pro-rata table.
 *
 * @param throughMonth last month of the battery's life, counted from 1, for which the row holds
 * @param percent what is paid then, above 0 and below 100
 */
public record ProRata(int throughMonth, BigDecimal percent) {}
