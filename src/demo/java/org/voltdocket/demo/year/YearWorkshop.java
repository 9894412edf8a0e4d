package org.voltdocket.demo.year;

import java.util.List;

/**
 * An invented workshop.
 *
 * @param share of all cases, relative to the others
 * @param tests whether it tests before it replaces
 * @param instrument serial of its tester
 * @param reads what its tester shows of each true ampere of cranking current
 */
record YearWorkshop(String name, double share, boolean tests, String instrument, double reads) {

    /** Replaces without testing, and so most of its batteries come back sound. */
    static final YearWorkshop HASTY = new YearWorkshop("Saltmarsh Tyre and Battery (invented)", 1.7, false, "HT-0611", 1);

    /** Its tester reads eight per cent low. */
    static final YearWorkshop MISLED = new YearWorkshop("Gannet Cove Motors (invented)", 1.3, true, "HT-2207", 0.92);

    static final List<YearWorkshop> ALL = List.of(
            good("Lantern Yard Garage (invented)", 1.6, "HT-0102"),
            good("Copper Quay Workshop (invented)", 1.4, "HT-0318"),
            HASTY,
            MISLED,
            good("Thornfold Auto Electrics (invented)", 1.1, "HT-0440"),
            good("Kelp Lane Car Care (invented)", 1, "HT-0457"),
            good("Millrace Service Station (invented)", 0.9, "HT-0502"),
            good("Heronsgate Vans (invented)", 0.8, "HT-0733"),
            good("Old Mast Motors (invented)", 0.6, "HT-0871"),
            good("Pebble Row Garage (invented)", 0.45, "HT-0904"),
            good("Causeway Auto (invented)", 0.3, "HT-1015"),
            good("Windlass Garage (invented)", 0.15, "HT-1120"));

    private static YearWorkshop good(String name, double share, String instrument) {
        return new YearWorkshop(name, share, true, instrument, 1);
    }
}
