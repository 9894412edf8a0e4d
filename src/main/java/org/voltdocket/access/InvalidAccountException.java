package org.voltdocket.access;

/** A workshop, account, password or token that cannot be as asked; nothing was changed. */
public class InvalidAccountException extends RuntimeException {

    private final String field;

    InvalidAccountException(String field, String message) {
        super(message);
        this.field = field;
    }

    /** The field that must change: {@code name}, {@code password}, {@code workshop}, {@code current} or {@code role}. */
    public String field() {
        return field;
    }
}
