package org.voltdocket.diagnosis.read;

import java.util.List;

/**
 * A file that was not accepted.
 *
 * @param reason kind of rejection
 * @param detail one or two sentences: what happened, why, what to do next
 * @param errors the first {@value #SHOWN} errors in the order of the file; empty if the file as a whole is rejected
 * @param total how many there were in all
 */
public record RejectedFile(Reason reason, String detail, List<FileError> errors, long total) implements ReadResult {

    /** How many errors are shown. */
    public static final int SHOWN = 20;

    public RejectedFile {
        errors = List.copyOf(errors);
    }

    public RejectedFile(Reason reason, String detail) {
        this(reason, detail, List.of(), 0);
    }

    public RejectedFile(Reason reason, String detail, FileError only) {
        this(reason, detail, List.of(only), 1);
    }

    /** How many errors are not shown. */
    public long more() {
        return total - errors.size();
    }

    /** Kinds of rejection; {@code slug} is the section of the manual's page on problems. */
    public enum Reason {
        TOO_LARGE("file-too-large", 413),
        KIND_UNKNOWN("file-kind-unknown", 415),
        RECORDING("recording-refused", 422),
        SYSTEM_24V("system-24-volt", 422),
        TEST_RECORD("test-record-refused", 422),
        DOCUMENT("document-refused", 422),
        CASE_REQUEST("facts-refused", 400),
        NOTE("note-too-long", 422),
        CASE_FULL("case-full", 422);

        private final String slug;
        private final int status;

        Reason(String slug, int status) {
            this.slug = slug;
            this.status = status;
        }

        /** Stable identifier, the anchor in {@code /manual/problems}. */
        public String slug() {
            return slug;
        }

        /** HTTP status of the answer. */
        public int status() {
            return status;
        }
    }
}
