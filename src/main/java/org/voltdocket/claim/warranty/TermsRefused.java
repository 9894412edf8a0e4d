package org.voltdocket.claim.warranty;

import org.voltdocket.claim.MemberRefused;

/** Terms that cannot be right. Answered 400; nothing was recorded. */
public final class TermsRefused extends MemberRefused {

    private static final long serialVersionUID = 1L;

    TermsRefused(String field, String message) {
        super(field, message);
    }

    @Override
    protected String slug() {
        return "terms-refused";
    }

    @Override
    protected String title() {
        return "Warranty terms that cannot be right";
    }

    @Override
    protected String next() {
        return " Nothing was recorded: mend it and send it again.";
    }
}
