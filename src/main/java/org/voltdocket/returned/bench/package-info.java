/**
 * The bench procedure of each battery construction: its steps, their order and duration, and which step may be done when. Pure
 * functions. Start reading at {@link org.voltdocket.returned.bench.Checklist}.
 */
package org.voltdocket.returned.bench;
