/**
 * The case of a battery in a vehicle: its two keys, what is known of it, and who may see it.
 *
 * <p>This is the one place that decides visibility: a workshop sees the cases it belongs to, everybody else of the
 * distributor sees all, and what is not visible does not exist ({@link org.voltdocket.casefile.NotFoundException}).
 * Offers {@link org.voltdocket.casefile.CaseService} and the records it takes and gives; {@link
 * org.voltdocket.casefile.CaseRequest} reads a request or form into them. Tells {@link
 * org.voltdocket.casefile.CaseOpenedEvent} and {@link org.voltdocket.casefile.FactsChangedEvent}.
 * Inside, {@code catalogue} says what a serial is: type, batch, supplier; and {@code web} shows it.
 * May import {@code kernel}, {@code diagnosis}, {@code access}, {@code trail}, {@code ui}. Start reading at {@link
 * org.voltdocket.casefile.CaseService}.
 */
package org.voltdocket.casefile;
