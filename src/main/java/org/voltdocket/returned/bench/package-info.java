/**
 * The bench procedure of each kind of battery: which steps, how long, in which order, and what may be done when. Pure.
 */
package org.voltdocket.returned.bench;
