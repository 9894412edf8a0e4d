package org.voltdocket.paper;

import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfString;
import com.lowagie.text.pdf.PdfStructureElement;

/** The structure that assistive technology reads (ISO 32000-1, 14.7 and 14.8). */
final class PdfStructure {

    static final PdfName H1 = new PdfName("H1");
    static final PdfName H2 = new PdfName("H2");
    static final PdfName H3 = new PdfName("H3");
    static final PdfName P = new PdfName("P");
    static final PdfName TABLE = new PdfName("Table");
    static final PdfName TR = new PdfName("TR");
    static final PdfName TH = new PdfName("TH");
    static final PdfName TD = new PdfName("TD");
    static final PdfName LABEL = new PdfName("Lbl");
    static final PdfName BODY = new PdfName("LBody");
    static final PdfName FIGURE = new PdfName("Figure");

    private static final PdfName ARTIFACT = new PdfName("Artifact");

    private PdfStructure() {}

    /** A node of the structure. */
    record Element(PdfStructureElement node) {

        Element child(PdfName type) {
            return new Element(new PdfStructureElement(node, type));
        }

        Element describedAs(String alternative) {
            node.put(new PdfName("Alt"), new PdfString(alternative, com.lowagie.text.pdf.PdfObject.TEXT_UNICODE));
            return this;
        }

        /** Says of a header cell what it heads: {@code Column} or {@code Row}. */
        Element heads(String scope) {
            PdfDictionary attributes = new PdfDictionary();
            attributes.put(new PdfName("O"), TABLE);
            attributes.put(new PdfName("Scope"), new PdfName(scope));
            node.put(new PdfName("A"), attributes);
            return this;
        }

        /** What is drawn belongs to this node. */
        void around(PdfContentByte canvas, Runnable drawing) {
            canvas.beginMarkedContentSequence(node);
            drawing.run();
            canvas.endMarkedContentSequence();
        }
    }

    /** What is drawn is furniture: rules, shades, running heads. */
    static void artifact(PdfContentByte canvas, Runnable drawing) {
        canvas.beginMarkedContentSequence(ARTIFACT);
        drawing.run();
        canvas.endMarkedContentSequence();
    }
}
