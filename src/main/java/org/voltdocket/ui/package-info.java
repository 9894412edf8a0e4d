/**
 * What all pages share: the frame, texts for identifiers and numbers, message bundles.
 *
 * <p>Offers {@link org.voltdocket.ui.TextFormatter} (in templates {@code @words}) and {@link org.voltdocket.ui.PageFrame}. The pages
 * of a package are controllers in {@code <package>.web}, templates under {@code templates/<package>} that fill {@code ui/frame ::
 * page}, and texts in {@code messages/<package>.properties}. One style sheet and a few script modules are in {@code static/}; the
 * content security policy allows no inline script or style. {@code error} maps exceptions to problem details and error pages.
 * Start reading at {@code templates/ui/frame.html}.
 */
package org.voltdocket.ui;
