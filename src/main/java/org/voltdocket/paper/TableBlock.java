package org.voltdocket.paper;

import com.lowagie.text.pdf.ColumnText;
import com.lowagie.text.pdf.PdfContentByte;
import java.util.ArrayList;
import java.util.List;

/** Lays out a table row by row. Rows are not split where they fit on a page; the header is repeated on each page. */
final class TableBlock {

    private static final float PAD = 7;
    private static final float AIR = 2;

    private final PageLayout flow;
    private final Table table;
    private final PdfStructure.Element tag;
    private final float[] edges;

    TableBlock(PageLayout flow, Table table) {
        this.flow = flow;
        this.table = table;
        this.tag = flow.element(PdfStructure.TABLE);
        this.edges = new float[table.columns.size() + 1];
        float shares = 0;
        for (Table.Column column : table.columns) {
            shares += column.share();
        }
        edges[0] = PdfPages.LEFT;
        for (int i = 0; i < table.columns.size(); i++) {
            edges[i + 1] = edges[i] + table.columns.get(i).share() / shares * (PdfPages.RIGHT - PdfPages.LEFT);
        }
    }

    void draw() {
        float first = height(table.rows.get(0));
        flow.keep(headHeight() + Math.min(first, 200));
        if (table.headed()) {
            head(tag.child(PdfStructure.TR), true);
        }
        for (List<TableCell> row : table.rows) {
            float height = height(row);
            if (flow.room() < Math.min(height, PdfPages.TOP - PdfPages.BOTTOM - headHeight())) {
                turn();
            }
            set(row, height);
        }
    }

    private List<TableCell> titles() {
        return table.columns.stream()
                .map(column -> TableCell.of(column.title(), TextStyle.SMALL_STRONG))
                .toList();
    }

    private float headHeight() {
        return table.headed() ? height(titles()) : 0;
    }

    private void turn() {
        flow.newPage();
        if (table.headed()) {
            head(null, false);
        }
    }

    /** The header; on later pages it is marked as an artifact for assistive technology. */
    private void head(PdfStructure.Element row, boolean first) {
        List<TableCell> titles = titles();
        float height = height(titles);
        PdfContentByte canvas = flow.canvas();
        PdfStructure.artifact(canvas, () -> {
            canvas.setColorFill(DocumentColors.SUNK);
            canvas.rectangle(PdfPages.LEFT, flow.y() - height, PdfPages.RIGHT - PdfPages.LEFT, height);
            canvas.fill();
        });
        for (int i = 0; i < titles.size(); i++) {
            ColumnText text = flow.column(titles.get(i), table.columns.get(i).right());
            if (first) {
                flow.set(
                        text,
                        row.child(PdfStructure.TH).heads("Column"),
                        left(i),
                        right(i),
                        flow.y() - AIR,
                        flow.y() - height);
            } else {
                int column = i;
                text.setCanvas(canvas);
                text.setSimpleColumn(left(i), flow.y() - height + PageLayout.HANG, right(i), flow.y() - AIR);
                PdfStructure.artifact(canvas, () -> text.go());
            }
        }
        flow.down(height);
    }

    private void set(List<TableCell> row, float height) {
        PdfStructure.Element line = tag.child(PdfStructure.TR);
        List<ColumnText> texts = new ArrayList<>();
        List<PdfStructure.Element> owners = new ArrayList<>();
        for (int i = 0; i < row.size(); i++) {
            boolean head = i == 0;
            texts.add(flow.column(row.get(i), table.columns.get(i).right()));
            owners.add(head ? line.child(PdfStructure.TH).heads("Row") : line.child(PdfStructure.TD));
        }
        boolean[] open = new boolean[row.size()];
        for (int i = 0; i < row.size(); i++) {
            open[i] = !row.get(i).runs().isEmpty();
        }
        float left = height;
        while (true) {
            float band = Math.min(left, flow.room());
            boolean more = false;
            for (int i = 0; i < row.size(); i++) {
                if (open[i]) {
                    float top = flow.y() - AIR;
                    open[i] = flow.set(texts.get(i), owners.get(i), left(i), right(i), top, flow.y() - band - 1);
                    more |= open[i];
                }
            }
            flow.down(band);
            rule();
            if (!more) {
                return;
            }
            left = Math.max(left - band, 40);
            turn();
        }
    }

    private float height(List<TableCell> row) {
        float height = 0;
        for (int i = 0; i < row.size(); i++) {
            height = Math.max(height, flow.height(row.get(i), right(i) - left(i)));
        }
        return height + 2 * AIR;
    }

    private float left(int column) {
        return edges[column] + (column == 0 ? 2 : PAD);
    }

    private float right(int column) {
        return edges[column + 1] - 2;
    }

    private void rule() {
        PdfContentByte canvas = flow.canvas();
        PdfStructure.artifact(canvas, () -> {
            canvas.setLineWidth(0.5f);
            canvas.setColorStroke(DocumentColors.LINE);
            canvas.moveTo(PdfPages.LEFT, flow.y());
            canvas.lineTo(PdfPages.RIGHT, flow.y());
            canvas.stroke();
        });
    }
}
