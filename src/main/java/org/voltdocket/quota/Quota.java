package org.voltdocket.quota;

/** What a workshop has a limited amount of. */
public enum Quota {
    /** Requests that upload files, also refused ones. */
    UPLOADS("uploads"),
    /** Size of these requests. */
    BYTES("bytes"),
    /** Requests that open a case, change facts or ask for an assessment. */
    ASSESSMENTS("assessments"),
    /** Tokens that work. */
    TOKENS("tokens");

    private final String id;

    Quota(String id) {
        this.id = id;
    }

    /** The stable identifier in JSON and messages. */
    public String id() {
        return id;
    }
}
