package org.voltdocket.casefile;

/** What was asked for does not exist, or not for the one who asked. Answered 404, the same in both cases. */
public final class NotVisible extends RuntimeException {

    private static final long serialVersionUID = 1L;

    /** @param what for example {@code case V-000-001-6} */
    public NotVisible(String what) {
        super("There is no " + what + " that you may see. Check what you typed, or ask the distributor whether your"
                + " workshop belongs to it.");
    }
}
