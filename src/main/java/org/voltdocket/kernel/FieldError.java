package org.voltdocket.kernel;

/**
 * What is wrong with one member of a request.
 *
 * @param field its name, dotted: {@code battery.capacityAh}
 * @param message what is wrong and what would be right
 */
public record FieldError(String field, String message) {}
