/**
 * What a claim is worth by its age, kilometres and use: terms per battery type, or per chemistry where the type is not known.
 *
 * <p>{@link org.voltdocket.warranty.WarrantyTermsService} keeps the terms, each with the day from which it holds; {@link
 * org.voltdocket.warranty.WarrantyCalculator} does the arithmetic, {@link org.voltdocket.warranty.WarrantyMonths} that of
 * calendar months. A {@link org.voltdocket.warranty.WarrantyCalculation} says the result and how it came about, and is kept
 * with a decision as it was.
 */
package org.voltdocket.warranty;
