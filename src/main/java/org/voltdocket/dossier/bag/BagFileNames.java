package org.voltdocket.dossier.bag;

import java.text.Normalizer;
import java.util.Locale;

/** Names that every file system takes: a running number, then what is portable of the name that was sent. */
final class BagFileNames {

    private static final int LONGEST = 80;

    private BagFileNames() {}

    /**
     * @param position from 1; makes the name unique and different from names that some systems reserve
     * @param sent may hold anything
     */
    static String of(int position, String sent) {
        String plain = Normalizer.normalize(sent, Normalizer.Form.NFKD)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^A-Za-z0-9._-]+", "_")
                .replaceAll("\\.{2,}", ".")
                .replaceAll("[.]+$", "");
        if (plain.length() > LONGEST) {
            int dot = plain.lastIndexOf('.');
            String ending = dot > plain.length() - 10 ? plain.substring(dot) : "";
            plain = plain.substring(0, LONGEST - ending.length()) + ending;
        }
        return String.format(Locale.ROOT, "%03d-%s", position, plain.isEmpty() ? "file" : plain);
    }
}
