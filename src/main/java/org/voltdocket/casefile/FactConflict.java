package org.voltdocket.casefile;

/**
 * A fact that the case knows with another value than the request gives.
 *
 * @param field its name, dotted
 * @param known value of the case
 * @param given value of the request
 */
public record FactConflict(String field, String message, Object known, Object given) {}
