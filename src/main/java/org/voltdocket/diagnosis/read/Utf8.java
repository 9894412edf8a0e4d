package org.voltdocket.diagnosis.read;

/** Checks UTF-8 strictly (RFC 3629: no overlong forms, no surrogates, nothing above U+10FFFF). */
final class Utf8 {

    private Utf8() {}

    /** Index of the first byte that does not belong, or -1. */
    static int firstWrong(byte[] b, int from, int to) {
        int i = from;
        while (i < to) {
            int c = b[i] & 0xff;
            if (c < 0x80) {
                i++;
                continue;
            }
            int more = c >= 0xc2 && c <= 0xdf ? 1 : c >= 0xe0 && c <= 0xef ? 2 : c >= 0xf0 && c <= 0xf4 ? 3 : 0;
            if (more == 0 || i + more > to - 1 || !second(c, b[i + 1] & 0xff)) {
                return i;
            }
            for (int k = 2; k <= more; k++) {
                if ((b[i + k] & 0xc0) != 0x80) {
                    return i;
                }
            }
            i += more + 1;
        }
        return -1;
    }

    private static boolean second(int lead, int next) {
        int least = lead == 0xe0 ? 0xa0 : lead == 0xf0 ? 0x90 : 0x80;
        int most = lead == 0xed ? 0x9f : lead == 0xf4 ? 0x8f : 0xbf;
        return next >= least && next <= most;
    }

    /** Number of characters (code points) in valid UTF-8. */
    static int characters(byte[] b, int from, int to) {
        int n = 0;
        for (int i = from; i < to; i++) {
            if ((b[i] & 0xc0) != 0x80) {
                n++;
            }
        }
        return n;
    }
}
