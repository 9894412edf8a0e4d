/**
 * A case packed whole: the originals bit for bit, the case as the API tells it, its report, its claim with the letter of the decision, and its trail, as a BagIt bag
 * (RFC 8493) that anyone can check without this program.
 *
 * <p>Offers {@link org.voltdocket.dossier.bag.CaseBagExporter}. {@code BagWriter} knows the format and nothing of cases. Start
 * reading at {@link org.voltdocket.dossier.bag.CaseBagExporter}.
 */
package org.voltdocket.dossier.bag;
