package org.voltdocket.secondmodel;

import java.util.List;

/** Makes cases whose truth is known. */
public interface CaseSource {

    /** Names of the scenarios it can make. */
    List<String> scenarios();

    /** The case of this scenario and seed; the same pair always gives the same case. */
    Labelled make(String scenario, long seed);
}
