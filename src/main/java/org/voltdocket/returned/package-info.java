/**
 * Returned batteries: arrival, visual inspection, bench procedure, outcome, pallets and sampling of lots.
 *
 * <p>This package holds the values and the tables of one returned battery. {@code service} records what happens to it, {@code
 * pallet} the pallets that batteries arrive on, {@code lot} which batteries of a lot are tested. {@code bench} holds the bench
 * procedure and {@code sampling} the sampling plans; both are free of database and web. Bench evidence goes through the intake of
 * package {@code evidence}. Start reading at {@code ReturnService} in {@code service}.
 */
package org.voltdocket.returned;
