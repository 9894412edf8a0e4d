/**
 * What a claim is worth by its age, kilometres and use: terms per battery type, or per chemistry where the type is not known.
 *
 * <p>{@link org.voltdocket.claim.warranty.WarrantyTerms} keeps the terms, each with the day from which it holds; {@link
 * org.voltdocket.claim.warranty.Reckoning} does the arithmetic, {@link org.voltdocket.claim.warranty.TermMonths} that of
 * calendar months. A {@link org.voltdocket.claim.warranty.WarrantySum} says the result and how it came about, and is kept
 * with a decision as it was.
 */
package org.voltdocket.claim.warranty;
