package org.voltdocket.diagnosis;

/**
 * Numbers of the methods that a whole edition of the rule book shares, for what is no single row's quantity. A method whose
 * arithmetic changes gets a new number and the old one stays, so that a released edition goes on saying what it said.
 *
 * @param weighing how a value with an interval is set against a limit, 1 or 2
 * @param regimes how a recording is divided into regimes, 1 or 2
 * @param estimates which of several ways gives an estimate that the assessment shows, 1 or 2
 */
public record Methods(int weighing, int regimes, int estimates) {

    /** What an edition that names none has. */
    public static final Methods FIRST = new Methods(1, 1, 1);
}
