/**
 * Notices: unusual patterns in cases and workshops that a person should review before a claim is decided. They may be abuse or
 * chance. A notice refuses nothing, and no workshop sees one.
 *
 * <p>Offers {@link org.voltdocket.notice.NoticeService}. Each change of a case adds it to the pending checks; a task of the
 * scheduler runs every {@link org.voltdocket.notice.NoticeFinder} on it, stores new notices and ends those that are not found any
 * more. Every hour the results of all workshops are compared ({@link org.voltdocket.notice.WorkshopComparison}). {@code finder}
 * holds the finders. Start reading at {@code NoticeUpdater}.
 */
package org.voltdocket.notice;
