package org.voltdocket.diagnosis.read;

/** Largest files that are accepted. {@code spring.servlet.multipart.max-file-size} repeats the first one; a test compares them. */
public final class FileLimits {

    /** Size of a file as it is sent, MiB. */
    public static final int FILE_MIB = 64;

    /** Size of a file as it is sent, bytes. */
    public static final long FILE_BYTES = (long) FILE_MIB << 20;

    /** Size that a gzipped recording may unpack to, GiB. */
    static final int UNPACKED_GIB = 1;

    static final long UNPACKED_BYTES = (long) UNPACKED_GIB << 30;

    /** Rows of a recording. */
    public static final int ROWS = 5_000_000;

    /** Size of a test record, MiB. */
    static final int TEST_RECORD_MIB = 1;

    static final int TEST_RECORD_BYTES = TEST_RECORD_MIB << 20;

    private FileLimits() {}
}
