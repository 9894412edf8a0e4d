package org.voltdocket.paper;

import com.lowagie.text.Element;
import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfTemplate;
import java.awt.Color;
import java.util.List;

/** Places blocks below each other and goes to a new page where one does not fit. Lengths in points, y upwards. */
final class PageLayout {

    /** Space below the last baseline for descenders. */
    static final float HANG = 3;

    private static final float INSET = 9;

    private final PdfPages sheets;
    private float y = PdfPages.TOP;

    PageLayout(PdfPages sheets) {
        this.sheets = sheets;
    }

    float y() {
        return y;
    }

    float room() {
        return y - PdfPages.BOTTOM;
    }

    boolean atTop() {
        return y == PdfPages.TOP;
    }

    void down(float height) {
        y -= height;
    }

    void space(float height) {
        if (!atTop()) {
            y -= height;
        }
    }

    void keep(float height) {
        if (room() < height && !atTop()) {
            newPage();
        }
    }

    void newPage() {
        sheets.newPage();
        y = PdfPages.TOP;
    }

    PdfContentByte canvas() {
        return sheets.canvas();
    }

    PdfStructure.Element element(PdfName tag) {
        return sheets.root().child(tag);
    }

    /** Text that is still to be set. */
    ColumnText column(TableCell cell, boolean right) {
        ColumnText column = new ColumnText(canvas());
        column.addText(sheets.type().phrase(cell));
        column.setAlignment(right ? Element.ALIGN_RIGHT : Element.ALIGN_LEFT);
        column.setLeading(leading(cell));
        return column;
    }

    static float leading(TableCell cell) {
        return (float) cell.runs().stream()
                .mapToDouble(run -> run.style().leading())
                .max()
                .orElse(0);
    }

    /** Height of a text in a column of this width. */
    float height(TableCell cell, float width) {
        if (cell.runs().isEmpty()) {
            return 0;
        }
        ColumnText column = column(cell, false);
        column.setSimpleColumn(0, -100_000, width, 0);
        column.go(true);
        return -column.getYLine() + HANG;
    }

    /** Sets what fits above {@code bottom}; answers whether text is left. */
    boolean set(ColumnText text, PdfStructure.Element owner, float left, float right, float top, float bottom) {
        boolean[] more = new boolean[1];
        PdfContentByte canvas = canvas();
        text.setCanvas(canvas);
        text.setSimpleColumn(left, bottom + HANG, right, top);
        owner.around(canvas, () -> more[0] = ColumnText.hasMoreText(text.go()));
        return more[0];
    }

    void text(TableCell cell, PdfName tag, float before, float after) {
        space(before);
        keep(leading(cell) + HANG);
        place(cell, element(tag), PdfPages.LEFT, PdfPages.RIGHT);
        space(after);
    }

    void labelled(String label, TableCell cell, PdfStructure.Element item, float indent) {
        keep(leading(cell) + HANG);
        TableCell mark = TableCell.of(label, cell.runs().get(0).style());
        set(
                column(mark, false),
                item.child(PdfStructure.LABEL),
                PdfPages.LEFT,
                PdfPages.LEFT + indent,
                y,
                y - leading(mark) * 1.5f);
        place(cell, item.child(PdfStructure.BODY), PdfPages.LEFT + indent, PdfPages.RIGHT);
        space(1);
    }

    private void place(TableCell cell, PdfStructure.Element owner, float left, float right) {
        ColumnText text = column(cell, false);
        while (set(text, owner, left, right, y, PdfPages.BOTTOM)) {
            newPage();
        }
        y = text.getYLine() - HANG;
    }

    void box(List<TableCell> paragraphs, Color fill, Color edge) {
        float left = PdfPages.LEFT + INSET;
        float right = PdfPages.RIGHT - INSET;
        float height = INSET;
        for (TableCell paragraph : paragraphs) {
            height += height(paragraph, right - left) + 2;
        }
        float whole = height + 3;
        keep(whole);
        PdfContentByte canvas = canvas();
        PdfStructure.artifact(canvas, () -> {
            canvas.setColorFill(fill);
            canvas.rectangle(PdfPages.LEFT, y - whole, PdfPages.RIGHT - PdfPages.LEFT, whole);
            canvas.fill();
            canvas.setColorFill(edge);
            canvas.rectangle(PdfPages.LEFT, y - whole, 3, whole);
            canvas.fill();
        });
        float end = y - whole;
        y -= INSET - 2;
        for (TableCell paragraph : paragraphs) {
            place(paragraph, element(PdfStructure.P), left, right);
            y -= 2;
        }
        y = Math.min(end, y) - 6;
    }

    void figure(float height, String alternative, PdfTemplate drawing) {
        keep(height);
        PdfContentByte canvas = canvas();
        element(PdfStructure.FIGURE)
                .describedAs(alternative)
                .around(canvas, () -> canvas.addTemplate(drawing, PdfPages.LEFT, y - height));
        y -= height;
    }
}
