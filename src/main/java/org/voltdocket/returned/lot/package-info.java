/**
 * Lots: batteries of one source of which a sample is drawn and tested.
 *
 * <p>{@link org.voltdocket.returned.lot.LotService} draws lots by the plans of {@code sampling}.
 */
package org.voltdocket.returned.lot;
