/**
 * What all pages share: the frame, words for identifiers and numbers, message bundles, problem details.
 *
 * <p>Offers {@link org.voltdocket.ui.TextFormatter} (in templates {@code @words}) and {@link org.voltdocket.ui.PageFrame}. A room's
 * pages are controllers in {@code <room>.web}, templates under {@code templates/<room>} that fill {@code ui/frame ::
 * page}, and words in {@code messages/<room>.properties}. One style sheet and a few script modules lie in {@code
 * static/}; the content security policy allows no inline script or style. May import {@code kernel}. Start reading at
 * {@code templates/ui/frame.html}.
 */
package org.voltdocket.ui;
