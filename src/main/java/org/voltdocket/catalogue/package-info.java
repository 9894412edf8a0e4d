/**
 * What suppliers produce and the distributor sells, so that a serial tells type, batch and supplier.
 *
 * <p>Offers {@link org.voltdocket.catalogue.CatalogueService} with the records it gives. It comes by CSV files, all of a
 * file or nothing; a correction ends the row that stood and adds another. Inside: {@code CatalogueTable} (columns and what
 * may stand in them), {@code CatalogueFile} (CSV to rows, or errors with their place), {@code CatalogueStore}
 * (PostgreSQL). May import what {@code casefile} may. Start reading at {@link org.voltdocket.catalogue.CatalogueService}.
 */
package org.voltdocket.catalogue;
