/**
 * Packs a case as a BagIt bag: the original files, the case and the claim as JSON, the report, the decision letter and the trail
 * (RFC 8493) that anyone can check without this program.
 *
 * <p>Offers {@link org.voltdocket.dossier.bag.CaseBagExporter}. {@code BagWriter} writes the format and is independent of cases. Start
 * reading at {@link org.voltdocket.dossier.bag.CaseBagExporter}.
 */
package org.voltdocket.dossier.bag;
