package org.voltdocket.paper;

import com.lowagie.text.Document;
import com.lowagie.text.PageSize;
import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.PdfArray;
import com.lowagie.text.pdf.PdfBoolean;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfDate;
import com.lowagie.text.pdf.PdfDestination;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfOutline;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfStructureElement;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import java.io.OutputStream;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.GregorianCalendar;

/** The pages: metadata, structure root, running heads and page numbers. */
final class PdfPages {

    static final float LEFT = 46;
    static final float RIGHT = PageSize.A4.getWidth() - 46;
    static final float TOP = PageSize.A4.getHeight() - 64;
    static final float BOTTOM = 58;
    private static final float HEAD = PageSize.A4.getHeight() - 40;
    private static final float FOOT = 34;
    private static final float NUMBER = 14;

    private final DocumentMetadata imprint;
    private final DocumentFonts type;
    private final Document document = new Document(PageSize.A4);
    private final PdfWriter writer;
    private final PdfTemplate total;
    private final PdfStructure.Element root;

    PdfPages(OutputStream out, DocumentMetadata imprint) {
        this.imprint = imprint;
        this.type = new DocumentFonts(imprint.identity());
        writer = PdfWriter.getInstance(document, out);
        writer.setCloseStream(false);
        writer.setPdfVersion(PdfWriter.VERSION_1_7);
        writer.setTagged();
        document.open();
        describe(writer.getInfo(), imprint);
        writer.createXmpMetadata();
        writer.getExtraCatalog().put(PdfName.LANG, new PdfString(imprint.language()));
        writer.addViewerPreference(PdfName.DISPLAYDOCTITLE, PdfBoolean.PDFTRUE);
        root = new PdfStructure.Element(
                new PdfStructureElement(writer.getStructureTreeRoot(), new PdfName("Document")));
        total = canvas().createTemplate(NUMBER, TextStyle.DIM.size + 2);
        furnish();
    }

    /** Metadata of a document; the same imprint gives the same bytes. */
    static void describe(PdfDictionary info, DocumentMetadata imprint) {
        PdfDate date = new PdfDate(GregorianCalendar.from(imprint.date().atZone(ZoneOffset.UTC)));
        info.put(PdfName.TITLE, new PdfString(imprint.title(), PdfObject.TEXT_UNICODE));
        info.put(PdfName.SUBJECT, new PdfString(imprint.subject(), PdfObject.TEXT_UNICODE));
        info.put(PdfName.CREATOR, new PdfString("Voltdocket"));
        info.put(PdfName.CREATIONDATE, date);
        info.put(PdfName.MODDATE, date);
        // the library takes the file's identifier from here instead of from the clock
        PdfString id = new PdfString(Arrays.copyOf(imprint.identity().bytes(), 16)).setHexWriting(true);
        PdfArray both = new PdfArray(id);
        both.add(id);
        info.put(PdfName.FILEID, both);
    }

    DocumentFonts type() {
        return type;
    }

    PdfStructure.Element root() {
        return root;
    }

    PdfContentByte canvas() {
        return writer.getDirectContent();
    }

    void newPage() {
        writer.setPageEmpty(false);
        document.newPage();
        furnish();
    }

    void bookmark(String title, float y) {
        new PdfOutline(writer.getRootOutline(), new PdfDestination(PdfDestination.FITH, y + 20), title);
    }

    PdfTemplate chart(Chart chart) {
        PdfTemplate drawing = canvas().createTemplate(RIGHT - LEFT, Plotter.height(chart));
        Plotter.draw(chart, drawing, type);
        return drawing;
    }

    private void furnish() {
        PdfContentByte canvas = canvas();
        PdfStructure.artifact(canvas, () -> {
            canvas.setLineWidth(0.6f);
            canvas.setColorStroke(DocumentColors.LINE);
            canvas.moveTo(LEFT, HEAD - 6);
            canvas.lineTo(RIGHT, HEAD - 6);
            canvas.stroke();
            String page = "Page " + writer.getPageNumber() + " of ";
            BaseFont font = type.font(TextStyle.DIM);
            float numbers = RIGHT - NUMBER + 2;
            canvas.beginText();
            canvas.setColorFill(TextStyle.DIM.ink);
            canvas.setFontAndSize(font, TextStyle.DIM.size);
            canvas.showTextAligned(PdfContentByte.ALIGN_LEFT, imprint.head(), LEFT, HEAD, 0);
            canvas.showTextAligned(PdfContentByte.ALIGN_LEFT, imprint.foot(), LEFT, FOOT, 0);
            canvas.showTextAligned(PdfContentByte.ALIGN_RIGHT, page, numbers, FOOT, 0);
            canvas.endText();
            canvas.addTemplate(total, numbers, FOOT);
        });
    }

    void close() {
        total.beginText();
        total.setColorFill(TextStyle.DIM.ink);
        total.setFontAndSize(type.font(TextStyle.DIM), TextStyle.DIM.size);
        total.showText(String.valueOf(writer.getPageNumber()));
        total.endText();
        writer.setPageEmpty(false);
        document.close();
    }
}
