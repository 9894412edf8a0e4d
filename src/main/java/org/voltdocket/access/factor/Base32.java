package org.voltdocket.access.factor;

/** Base 32 of RFC 4648, section 6, in upper case and without padding, as authenticator apps take it. */
final class Base32 {

    private static final String ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

    private Base32() {}

    static String encode(byte[] bytes) {
        StringBuilder text = new StringBuilder();
        int buffer = 0;
        int bits = 0;
        for (byte one : bytes) {
            buffer = buffer << 8 | one & 0xff;
            bits += 8;
            while (bits >= 5) {
                bits -= 5;
                text.append(ALPHABET.charAt(buffer >> bits & 31));
            }
            buffer &= (1 << bits) - 1;
        }
        if (bits > 0) {
            text.append(ALPHABET.charAt(buffer << 5 - bits & 31));
        }
        return text.toString();
    }

    /** @throws IllegalArgumentException where a character is not of the alphabet */
    static byte[] decode(String text) {
        byte[] bytes = new byte[text.length() * 5 / 8];
        int buffer = 0;
        int bits = 0;
        int at = 0;
        for (int i = 0; i < text.length(); i++) {
            int value = ALPHABET.indexOf(text.charAt(i));
            if (value < 0) {
                throw new IllegalArgumentException("not Base 32: character " + (i + 1));
            }
            buffer = buffer << 5 | value;
            bits += 5;
            if (bits >= 8) {
                bits -= 8;
                bytes[at++] = (byte) (buffer >> bits);
                buffer &= (1 << bits) - 1;
            }
        }
        return bytes;
    }
}
