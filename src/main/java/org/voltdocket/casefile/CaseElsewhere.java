package org.voltdocket.casefile;

/** The pair has a case, which another workshop opened. Answered 409, without its number. */
public final class CaseElsewhere extends RuntimeException {

    private static final long serialVersionUID = 1L;

    CaseElsewhere() {
        super("This battery in this vehicle has a case with another workshop. Nothing was changed: ask the"
                + " distributor to add your workshop to it.");
    }
}
