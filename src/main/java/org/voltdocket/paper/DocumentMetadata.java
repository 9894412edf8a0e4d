package org.voltdocket.paper;

import java.time.Instant;
import org.voltdocket.kernel.Sha256;

/**
 * Header, footer and metadata of a document.
 *
 * @param title title of the document
 * @param subject one sentence on what it is
 * @param head running head, on the left of every page's top
 * @param foot on the left of every page's foot
 * @param language of the text, BCP 47
 * @param date shown as date of creation and change; not the moment of printing
 * @param identity digest of the content; documents with the same identity are identical
 */
public record DocumentMetadata(
        String title, String subject, String head, String foot, String language, Instant date, Sha256 identity) {}
