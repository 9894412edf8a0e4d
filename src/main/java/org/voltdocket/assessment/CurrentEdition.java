package org.voltdocket.assessment;

import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The edition of the rule book that is in force. */
@FunctionalInterface
public interface CurrentEdition {

    /** The edition in force now. One assessment asks once, because the answer may change between two calls. */
    Rulebook rulebook();
}
