package org.voltdocket.dossier;

import java.security.SecureRandom;

/** Serials and VINs that no other test uses. The maker code is one that nobody has. */
public final class Pairs {

    private static final SecureRandom RANDOM = new SecureRandom();
    private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";

    private Pairs() {}

    public static String serial() {
        return "T" + random(5) + "-" + random(6);
    }

    public static String vin() {
        return "ZZ0" + random(14);
    }

    private static String random(int length) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < length; i++) {
            text.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
        }
        return text.toString();
    }
}
