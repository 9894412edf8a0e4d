/**
 * Returned batteries: arrival, visual inspection, bench procedure, outcome, pallets and sampling of lots.
 *
 * <p>{@link org.voltdocket.returned.ReturnService} records what happens to one battery, {@link
 * org.voltdocket.returned.PalletService} the pallets that batteries arrive on, and {@link org.voltdocket.returned.LotService}
 * which batteries of a lot are tested. {@code bench} holds the bench procedure and {@code sampling} the sampling plans; both are
 * free of database and web. Bench evidence goes through the intake of package {@code evidence}. Start reading at {@link
 * org.voltdocket.returned.ReturnService}.
 */
package org.voltdocket.returned;
