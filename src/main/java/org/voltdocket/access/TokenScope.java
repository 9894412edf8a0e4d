package org.voltdocket.access;

import java.util.regex.Pattern;

/** What a token may be used for; its account's role limits it further. */
public enum TokenScope {
    /** Opens cases and uploads evidence; reads nothing. */
    UPLOAD("upload"),
    /** Reads; changes nothing. */
    READ("read"),
    /** Everything that the account may do. */
    ALL("all");

    /** Opening a case, and evidence of a case, of a claim's request or of a returned battery. */
    private static final Pattern UPLOADS = Pattern.compile(
            "/api/v1/(cases|cases/[^/]+/evidence|cases/[^/]+/claim/requested-items/[^/]+|returns/[^/]+/evidence)");

    private final String id;

    TokenScope(String id) {
        this.id = id;
    }

    /** The identifier in JSON. */
    public String id() {
        return id;
    }

    /** Whether a call lies within the scope. */
    public boolean allows(String method, String path) {
        return switch (this) {
            case ALL -> true;
            case READ -> method.equals("GET") || method.equals("HEAD");
            case UPLOAD -> method.equals("POST") && UPLOADS.matcher(path).matches();
        };
    }
}
