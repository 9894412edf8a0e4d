/**
 * Values that cannot be wrong: battery serial, VIN, case number, digest, interval, actor.
 *
 * <p>Imports {@code java.*} only; every other room may import it. Each value parses once, at the door, and either
 * is right or answers an {@link java.lang.IllegalArgumentException} that says what was wrong and what to do.
 * Start reading at {@link org.voltdocket.kernel.Vin}.
 */
package org.voltdocket.kernel;
