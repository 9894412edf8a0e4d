/**
 * A small electrical model of a 12 V vehicle: battery, starter, alternator, charging control, the vehicle's own battery
 * sensor, wiring, loads and the road. Pure Java; chance comes from a seeded stream, so the same seed gives the same
 * vehicle and the same recording everywhere.
 *
 * <p>Imports {@code diagnosis} (records and enumerations) and {@code java.*} only. It knows nothing of rules, limits or
 * findings. Start reading at {@link org.voltdocket.demo.model.VehicleRun}; what may vary is in {@link
 * org.voltdocket.demo.model.Setup}.
 */
package org.voltdocket.demo.model;
