package org.voltdocket.paper;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfStructureElement;
import com.lowagie.text.pdf.PdfWriter;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;

/** Prints adhesive labels: one a page of the label's own size, or as many as fit on sheets of A4. */
public final class LabelPrinter {

    private static final float MARGIN = LabelSize.points(3);
    private static final float MOST_BAR_HEIGHT = LabelSize.points(12);
    private static final float MOST_QR_SIDE = LabelSize.points(27);
    /** Printers leave about this much of a sheet's edge blank. */
    private static final float SHEET_EDGE = LabelSize.points(4);

    private final LabelSize size;
    private final DocumentFonts type;
    private final PdfWriter writer;
    private final Document document;
    private final PdfStructure.Element root;

    private LabelPrinter(OutputStream out, DocumentMetadata imprint, LabelSize size, Rectangle page) {
        this.size = size;
        this.type = new DocumentFonts(imprint.identity());
        document = new Document(page);
        writer = PdfWriter.getInstance(document, out);
        writer.setCloseStream(false);
        writer.setPdfVersion(PdfWriter.VERSION_1_7);
        writer.setTagged();
        document.open();
        PdfPages.describe(writer.getInfo(), imprint);
        writer.createXmpMetadata();
        writer.getExtraCatalog().put(PdfName.LANG, new PdfString(imprint.language()));
        root = new PdfStructure.Element(
                new PdfStructureElement(writer.getStructureTreeRoot(), new PdfName("Document")));
    }

    /** One label a page, for a label printer. */
    public static void roll(OutputStream out, DocumentMetadata imprint, LabelSize size, List<Label> labels) {
        LabelPrinter printer = new LabelPrinter(out, imprint, size, new Rectangle(size.width(), size.height()));
        for (int i = 0; i < labels.size(); i++) {
            if (i > 0) {
                printer.document.newPage();
            }
            printer.draw(labels.get(i), 0, 0);
        }
        printer.close();
    }

    /** As many as fit on each sheet of A4, with lines to cut along. */
    public static void sheets(OutputStream out, DocumentMetadata imprint, LabelSize size, List<Label> labels) {
        LabelPrinter printer = new LabelPrinter(out, imprint, size, PageSize.A4);
        float wide = PageSize.A4.getWidth() - 2 * SHEET_EDGE;
        float high = PageSize.A4.getHeight() - 2 * SHEET_EDGE;
        int columns = Math.max(1, (int) ((wide + 0.5f) / size.width()));
        int rows = Math.max(1, (int) ((high + 0.5f) / size.height()));
        float left = (PageSize.A4.getWidth() - columns * size.width()) / 2;
        float top = PageSize.A4.getHeight() - (PageSize.A4.getHeight() - rows * size.height()) / 2;
        for (int i = 0; i < labels.size(); i++) {
            int place = i % (columns * rows);
            if (i > 0 && place == 0) {
                printer.document.newPage();
            }
            float x = left + place % columns * size.width();
            float y = top - (place / columns + 1) * size.height();
            printer.cutLines(x, y);
            printer.draw(labels.get(i), x, y);
        }
        printer.close();
    }

    private void cutLines(float x, float y) {
        PdfContentByte canvas = writer.getDirectContent();
        PdfStructure.artifact(canvas, () -> {
            canvas.setLineWidth(0.3f);
            canvas.setColorStroke(DocumentColors.LINE);
            canvas.rectangle(x, y, size.width(), size.height());
            canvas.stroke();
        });
    }

    private void draw(Label label, float x, float y) {
        PdfContentByte canvas = writer.getDirectContent();
        float left = x + MARGIN;
        float right = x + size.width() - MARGIN;
        float top = y + size.height() - MARGIN;
        float bars = Math.min(MOST_BAR_HEIGHT, size.height() * 0.2f);
        root.child(PdfStructure.FIGURE)
                .describedAs("Code 128: " + label.code())
                .around(canvas, () -> BarcodePainter.bars(canvas, label.code(), left, top - bars, right - left, bars));
        float next = text(
                List.of(TableCell.of(label.code(), label.code().length() > 24 ? TextStyle.MONO : TextStyle.MONO_LARGE)),
                left,
                right,
                top - bars - 2,
                y);
        float side = Math.min(MOST_QR_SIDE, size.height() * 0.42f);
        root.child(PdfStructure.FIGURE)
                .describedAs("QR: " + label.address())
                .around(canvas, () -> BarcodePainter.square(canvas, label.address(), right - side, next - side, side));
        List<TableCell> lines = new ArrayList<>();
        lines.add(TableCell.of(label.heading(), TextStyle.LEAD));
        label.lines().forEach(line -> lines.add(TableCell.of(line, TextStyle.SMALL)));
        float below = text(lines, left, right - side - 2, next, y);
        cautions(label, left, right, right - side - 2, below - 1, next - side, y + MARGIN / 2);
    }

    /** Beside the QR code and below it, in the largest type that fits. */
    private void cautions(Label label, float left, float right, float beside, float top, float qrBottom, float bottom) {
        String text = String.join(" ", label.cautions());
        for (float size = 6.6f; ; size -= 0.3f) {
            boolean last = size < 3.4f;
            ColumnText upper = column(text, size);
            upper.setSimpleColumn(left, Math.max(bottom, qrBottom), beside, top);
            boolean more = ColumnText.hasMoreText(upper.go(true));
            boolean fits = !more;
            if (more && qrBottom > bottom) {
                upper.setSimpleColumn(left, bottom, right, Math.min(top, qrBottom));
                fits = !ColumnText.hasMoreText(upper.go(true));
            }
            if (fits || last) {
                set(text, size, left, right, beside, top, qrBottom, bottom);
                return;
            }
        }
    }

    private void set(
            String text, float size, float left, float right, float beside, float top, float qrBottom, float bottom) {
        PdfContentByte canvas = writer.getDirectContent();
        root.child(PdfStructure.P).around(canvas, () -> {
            ColumnText column = column(text, size);
            column.setCanvas(canvas);
            column.setSimpleColumn(left, Math.max(bottom, qrBottom), beside, top);
            if (ColumnText.hasMoreText(column.go()) && qrBottom > bottom) {
                column.setSimpleColumn(left, bottom, right, Math.min(top, qrBottom));
                column.go();
            }
        });
    }

    private ColumnText column(String text, float size) {
        ColumnText column = new ColumnText(writer.getDirectContent());
        column.addText(new com.lowagie.text.Phrase(
                text,
                new com.lowagie.text.Font(
                        type.font(TextStyle.SMALL), size, com.lowagie.text.Font.NORMAL, DocumentColors.INK)));
        column.setLeading(size * 1.2f);
        return column;
    }

    /** Sets lines below each other; answers where the next may begin. */
    private float text(List<TableCell> lines, float left, float right, float top, float bottom) {
        PdfContentByte canvas = writer.getDirectContent();
        float y = top;
        for (TableCell line : lines) {
            ColumnText column = new ColumnText(canvas);
            column.addText(type.phrase(line));
            float leading = PageLayout.leading(line);
            column.setLeading(leading);
            column.setSimpleColumn(left, bottom, right, y);
            root.child(PdfStructure.P).around(canvas, () -> column.go());
            y = column.getYLine() - 1.5f;
        }
        return y - 1.5f;
    }

    private void close() {
        document.close();
    }
}
