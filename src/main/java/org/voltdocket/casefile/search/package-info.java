/**
 * Lists of cases: filters, text search, order and pages.
 *
 * <p>{@link org.voltdocket.casefile.search.CaseSearch} lists what an actor may see. {@link
 * org.voltdocket.casefile.search.CaseSearchText} says what a typed text may mean, also for the desk.
 */
package org.voltdocket.casefile.search;
