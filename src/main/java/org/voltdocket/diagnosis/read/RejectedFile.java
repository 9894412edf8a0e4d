package org.voltdocket.diagnosis.read;

import java.util.List;

/**
 * The upload was not taken; the trail says so, the evidence does not hold it.
 *
 * @param reason which kind of refusal
 * @param detail one or two sentences: what happened, why, what to do next
 * @param errors the first {@value #SHOWN} places, in the order of the file; empty where no place is to blame
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

    /** Kinds of refusal; {@code slug} names the place in the manual's page of problems. */
    public enum Reason {
        TOO_LARGE("file-too-large", 413, "The file is too large"),
        KIND_UNKNOWN("file-kind-unknown", 415, "This kind of file is not read here"),
        RECORDING("recording-refused", 422, "The recording cannot be read"),
        SYSTEM_24V("system-24-volt", 422, "The recording is of a 24 V system"),
        TEST_RECORD("test-record-refused", 422, "The test record cannot be read"),
        DOCUMENT("document-refused", 422, "The document is damaged"),
        CASE_REQUEST("facts-refused", 400, "The request that opens the case is not valid"),
        NOTE("note-too-long", 422, "The note is too long");

        private final String slug;
        private final int status;
        private final String title;

        Reason(String slug, int status, String title) {
            this.slug = slug;
            this.status = status;
            this.title = title;
        }

        /** Stable identifier, the anchor in {@code /manual/problems}. */
        public String slug() {
            return slug;
        }

        /** HTTP status of the answer. */
        public int status() {
            return status;
        }

        /** Short text for the answer's {@code title}. */
        public String title() {
            return title;
        }
    }
}
