package org.voltdocket.claim;

/** What an account contributed to a case, so that it does not decide the claim as well. */
public enum Contribution {
    /** It uploaded evidence. */
    EVIDENCE("evidence", "evidence-kept"),
    /** It changed facts. */
    FACTS("facts", "facts-edited", "facts-filled"),
    /** It opened the claim. */
    CLAIM("claim", "claim-opened");

    private final String id;
    private final String[] acts;

    Contribution(String id, String... acts) {
        this.id = id;
        this.acts = acts;
    }

    /** Identifier in JSON and in message codes. */
    public String id() {
        return id;
    }

    /** The acts of the trail that are such a contribution. */
    public String[] acts() {
        return acts.clone();
    }
}
