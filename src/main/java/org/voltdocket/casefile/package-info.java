/**
 * The case of a battery in a vehicle: its two keys, its facts, and who may see it.
 *
 * <p>Visibility is decided here: a workshop sees the cases it belongs to, the other roles see all, and a case that an actor may
 * not see is reported as not found. {@link org.voltdocket.casefile.CaseService} opens, reads and changes cases; {@link
 * org.voltdocket.casefile.CaseRequest} parses requests and forms. {@code search} lists cases, {@code pending} keeps the marks of
 * cases that wait for an assessment, {@code web} shows the cases of one battery or vehicle. Publishes {@link
 * org.voltdocket.casefile.CaseOpenedEvent} and {@link org.voltdocket.casefile.FactsChangedEvent}. Start reading at {@link
 * org.voltdocket.casefile.CaseService}.
 */
package org.voltdocket.casefile;
