package org.voltdocket.assessment.edition;

/** The program brings a text under a released name that this archive knows by another text: it must not start. */
public final class EditionMismatchException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    EditionMismatchException(String name) {
        super("The edition " + name
                + " of the rule book in this program is not the released one that this archive knows:"
                + " its digest differs, and decisions rest on the kept one.");
    }

    /** What to do. */
    public String action() {
        return "Put the released file back under shared/rulebook, and give a changed one the next name. Nothing was"
                + " changed in the database.";
    }
}
