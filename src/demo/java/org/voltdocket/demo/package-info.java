/**
 * Invented cases: an invented vehicle per cause, its facts, tests and recordings, and the demo archive filled with them.
 *
 * <p>In the source folder {@code src/demo}, outside the server's jar. {@link org.voltdocket.demo.Generator} generates a case
 * from a scenario and a seed; {@code demo.model} simulates the vehicle in pure Java; the classes that fill the archive use the
 * same services as a workshop. Nothing here describes real vehicles, makers or workshops.
 */
package org.voltdocket.demo;
