package org.voltdocket.claim.desk;

import org.voltdocket.claim.MemberRefused;

/** A filter or a setting of the desk that cannot be right. Answered 400; nothing was changed. */
public final class DeskRefused extends MemberRefused {

    private static final long serialVersionUID = 1L;

    DeskRefused(String field, String message) {
        super(field, message);
    }

    @Override
    protected String slug() {
        return "desk-refused";
    }

    @Override
    protected String title() {
        return "Something asked of the desk cannot be right";
    }

    @Override
    protected String next() {
        return " Mend it and send it again.";
    }
}
