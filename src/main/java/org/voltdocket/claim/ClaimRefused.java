package org.voltdocket.claim;

/** A member of the request is missing or cannot be right. Answered 400; nothing was changed. */
public final class ClaimRefused extends MemberRefused {

    private static final long serialVersionUID = 1L;

    ClaimRefused(String field, String message) {
        super(field, message);
    }

    @Override
    protected String slug() {
        return "claim-refused";
    }

    @Override
    protected String title() {
        return "Something in the claim cannot be right";
    }

    @Override
    protected String next() {
        return ". Nothing was changed: mend it and send it again.";
    }
}
