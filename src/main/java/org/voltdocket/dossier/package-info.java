/**
 * One immutable view of a case, read in one transaction and shown as page, JSON, report and bag.
 *
 * <p>{@link org.voltdocket.dossier.DossierService} reads a {@link org.voltdocket.dossier.Dossier} in a fixed number of queries.
 * {@code display} prepares it for templates, {@code web} serves pages and API, {@code list} lists cases, {@code report} and
 * {@code letter} print PDF documents, {@code bag} packs a case with all originals, and {@code audit} compares decisions with
 * bench outcomes. Start reading at {@link org.voltdocket.dossier.Dossier}.
 */
package org.voltdocket.dossier;
