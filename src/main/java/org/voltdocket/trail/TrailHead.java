package org.voltdocket.trail;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.voltdocket.kernel.Sha256;

/**
 * Where the chain stood at a moment. Noted outside the server (a printed letter, a bag, a sheet in a drawer), it shows later
 * whether entries were cut off at the end or the whole chain was written anew.
 *
 * @param position of an entry, from 1
 * @param hash of the same entry
 */
public record TrailHead(long position, Sha256 hash) {

    private static final Pattern FORM = Pattern.compile("(\\d{1,18})[\\s:]+([0-9a-f]{64})");

    public TrailHead {
        if (position < 1) {
            throw new IllegalArgumentException("positions of the trail count from 1");
        }
    }

    /**
     * Reads a head as it is printed.
     *
     * @throws IllegalArgumentException if the text is none
     */
    public static TrailHead parse(String text) {
        Matcher form = FORM.matcher(text == null ? "" : text.strip());
        if (!form.matches()) {
            throw new IllegalArgumentException(
                    "A noted head is a position and a hash of 64 hexadecimal digits in lower case,"
                            + " with a colon or a blank between, such as 1204:9f2c…; read '"
                            + (text == null ? "" : text) + "'.");
        }
        return new TrailHead(Long.parseLong(form.group(1)), new Sha256(form.group(2)));
    }

    /** As it is printed: position, colon, hash. */
    @Override
    public String toString() {
        return position + ":" + hash;
    }
}
