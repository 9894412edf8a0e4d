/**
 * What a person should look at before deciding a claim: repeats and patterns that may be abuse and may be chance.
 *
 * <p>Offers {@link org.voltdocket.notice.NoticeService}. A notice refuses nothing, and no workshop ever sees one. After each
 * change of a case a background worker ({@code NoticeWorker}) looks at it: finders compare, {@code NoticeStore} keeps what
 * is new and ends what is gone. May import what {@code claim} may. Start reading at {@code NoticeFinder}.
 */
package org.voltdocket.notice;
