/**
 * The desk: the list of claims with filters, orders, counts and saved filters. It reads the views {@code claim_list} and {@code
 * claim_count}, which package {@code claim} provides with one row per claim.
 *
 * <p>Offers {@link org.voltdocket.desk.DeskService}. A {@link org.voltdocket.desk.DeskFilter} holds the parameters of an address;
 * {@code DeskSearchSql} turns it into SQL that indexes serve. A search text has the same meaning as in the list of cases: {@link
 * org.voltdocket.casefile.search.CaseSearchText}. Start reading at {@link org.voltdocket.desk.DeskService}.
 */
package org.voltdocket.desk;
