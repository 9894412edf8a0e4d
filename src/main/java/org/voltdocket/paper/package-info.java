/**
 * Paper: the house style of printed documents.
 *
 * <p>Offers {@link org.voltdocket.paper.PdfDocument}, a tagged A4 PDF that flows headings, text, tables and charts, with fonts
 * of its own embedded; the same calls give the same bytes. What it prints comes as text and numbers: it knows nothing of
 * cases. May import {@code kernel}. Inside: {@code Flow} (places blocks and breaks pages), {@code TableBlock},
 * {@code Plotter} (charts by JFreeChart, as vectors), {@code Type} (fonts). Start reading at
 * {@link org.voltdocket.paper.PdfDocument}.
 */
package org.voltdocket.paper;
