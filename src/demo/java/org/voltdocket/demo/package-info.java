/**
 * Invented cases: an invented vehicle per cause, its facts, tests and recordings, and the demo archive filled with them.
 *
 * <p>The top room: it may import every other and none may import it. {@link org.voltdocket.demo.Generator} makes a case
 * from a scenario and a seed; {@code demo.model} is the vehicle's physics, pure Java; what fills the archive of the demo
 * profile uses the same doors as a workshop does. Nothing here says anything of real vehicles, makers or workshops.
 */
package org.voltdocket.demo;
