package org.voltdocket.recovery;

/**
 * A supplier's answer as a person types it.
 *
 * @param position of the claim in the list, from 1
 * @param outcome {@code credited} or {@code refused}
 * @param amount what is credited, such as {@code 89.90}; blank where all of it, or refused
 * @param on day of the answer, such as {@code 2026-03-04}
 * @param reason needed for a refusal and for a correction
 */
public record SupplierAnswer(int position, String outcome, String amount, String on, String reason) {}
