package org.voltdocket.paper;

import com.lowagie.text.pdf.PdfName;
import java.io.OutputStream;
import java.util.List;

/**
 * A document being printed, from top to bottom: A4, tagged for assistive technology, with bookmarks, page numbers and
 * embedded fonts. Long text wraps, long words break, tables repeat their heads on the next page. The same imprint and the
 * same calls give the same bytes. Not for use by two threads.
 */
public final class PdfDocument implements AutoCloseable {

    private static final float GAP = 6;
    private static final float LABEL = 18;

    private final PdfPages sheets;
    private final PageLayout flow;

    private PdfDocument(PdfPages sheets) {
        this.sheets = sheets;
        this.flow = new PageLayout(sheets);
    }

    /** Begins a document; it is whole after {@link #close}, which leaves the stream open. */
    public static PdfDocument open(OutputStream out, DocumentMetadata imprint) {
        return new PdfDocument(new PdfPages(out, imprint));
    }

    /** The title, and below it in small what it is about. */
    public void title(String title, TableCell below) {
        flow.text(TableCell.of(title, TextStyle.TITLE), PdfStructure.H1, 0, 2);
        flow.text(below, PdfStructure.P, 0, GAP);
    }

    /** Begins a section; a heading is never the last line of a page. */
    public void heading(String text) {
        flow.keep(90);
        sheets.bookmark(text, flow.y());
        flow.text(TableCell.of(text, TextStyle.HEADING), PdfStructure.H2, 12, 4);
    }

    /** Begins a piece of a part. */
    public void subheading(TableCell text) {
        flow.keep(60);
        flow.text(text, PdfStructure.H3, GAP, 2);
    }

    public void text(TableCell text) {
        flow.text(text, PdfStructure.P, 0, 4);
    }

    /** Begins a new page unless this much height, in points, is left. */
    public void keep(float points) {
        flow.keep(points);
    }

    /** A list, with numbers or with dots. */
    public void list(List<String> items, boolean numbered) {
        PdfStructure.Element list = flow.element(new PdfName("L"));
        for (int i = 0; i < items.size(); i++) {
            PdfStructure.Element item = list.child(PdfName.LI);
            flow.labelled(numbered ? (i + 1) + "." : "•", TableCell.of(items.get(i), TextStyle.BODY), item, LABEL);
        }
        flow.space(4);
    }

    /** Paragraphs that stay together in a shaded frame. */
    public void box(List<TableCell> paragraphs) {
        flow.box(paragraphs, DocumentColors.SUNK, DocumentColors.ACCENT);
    }

    /** The same in the colours of a caution. */
    public void caution(List<TableCell> paragraphs) {
        flow.box(paragraphs, DocumentColors.CAUTION, DocumentColors.CAUTION_LINE);
    }

    public void table(Table table) {
        if (!table.isEmpty()) {
            new TableBlock(flow, table).draw();
            flow.space(GAP);
        }
    }

    public void chart(Chart chart) {
        flow.figure(Plotter.height(chart), chart.alternative(), sheets.chart(chart));
        flow.space(4);
    }

    /** Ends the document. */
    @Override
    public void close() {
        sheets.close();
    }
}
