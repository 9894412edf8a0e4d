package org.voltdocket.diagnosis.read;

import static org.voltdocket.diagnosis.read.RejectedFile.Reason.DOCUMENT;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;

/** Looks whether a document is whole, as far as its outer structure tells. Nothing is rendered or run. */
final class DocumentCheck {

    private static final int TAIL = 2048;

    private DocumentCheck() {}

    /** ISO 32000: the header is there already; the file ends with {@code %%EOF}. */
    static ReadResult pdf(Path file) throws IOException {
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            byte[] tail = new byte[(int) Math.min(TAIL, in.length())];
            in.seek(in.length() - tail.length);
            in.readFully(tail);
            String end = new String(tail, StandardCharsets.ISO_8859_1);
            return end.contains("%%EOF") ? document("application/pdf") : damaged("PDF", "its end (%%EOF) is missing");
        }
    }

    /** ISO 15948: signature, then chunks of length, type, data and check; IHDR first, IEND last. */
    static ReadResult png(Path file) throws IOException {
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            long at = 8;
            boolean first = true;
            while (at + 12 <= in.length()) {
                in.seek(at);
                long length = in.readInt() & 0xffff_ffffL;
                int type = in.readInt();
                if (first && (type != 0x49484452 || length != 13 || in.readInt() <= 0 || in.readInt() <= 0)) {
                    return damaged("PNG", "it does not begin with an image header");
                }
                first = false;
                at += 12 + length;
                if (type == 0x49454e44) {
                    return at <= in.length() ? document("image/png") : damaged("PNG", "it is cut short");
                }
            }
            return damaged("PNG", "it is cut short");
        }
    }

    /** ITU-T T.81: segments up to a frame header and the start of scan; an end of image after it. */
    static ReadResult jpeg(Path file) throws IOException {
        // mapped, because fill bytes may precede each marker and are read one by one
        try (FileChannel channel = FileChannel.open(file)) {
            ByteBuffer in = channel.map(FileChannel.MapMode.READ_ONLY, 0, channel.size());
            int at = 2;
            boolean frame = false;
            while (at + 4 <= in.limit()) {
                int marker = in.getShort(at) & 0xffff;
                if (marker == 0xffff) {
                    at++;
                    continue;
                }
                int length = in.getShort(at + 2) & 0xffff;
                if (marker < 0xffc0 || length < 2) {
                    return damaged("JPEG", "a segment is broken");
                }
                frame |= marker <= 0xffcf && marker != 0xffc4 && marker != 0xffc8 && marker != 0xffcc;
                at += 2 + length;
                if (marker == 0xffda) {
                    return frame && endOfImage(in) ? document("image/jpeg") : damaged("JPEG", "it is cut short");
                }
            }
            return damaged("JPEG", "it is cut short");
        }
    }

    private static boolean endOfImage(ByteBuffer in) {
        int end = in.limit();
        for (int i = end - 2; i >= Math.max(0, end - (1 << 16)); i--) {
            if (in.getShort(i) == (short) 0xffd9) {
                return true;
            }
        }
        return false;
    }

    private static ParsedFile document(String mediaType) {
        return new ParsedFile(EvidenceKind.DOCUMENT, mediaType, null, List.of(), null);
    }

    private static RejectedFile damaged(String kind, String how) {
        return new RejectedFile(
                DOCUMENT,
                "The " + kind + " file is damaged: " + how + ". Export or photograph it again and upload that.");
    }
}
