/**
 * One immutable value per case, rendered as page, JSON, report and bag.
 *
 * <p>Offers {@link org.voltdocket.dossier.DossierService}, which reads a {@link org.voltdocket.dossier.Dossier} in a fixed
 * number of queries. {@code dossier.report} prints it, {@code dossier.bag} packs it with every original. The API of cases
 * and evidence lives in {@code dossier.web}, for its answers combine the rooms below.
 * May import every room but {@code insight}. Start reading at {@link org.voltdocket.dossier.Dossier}.
 */
package org.voltdocket.dossier;
