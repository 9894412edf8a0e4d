package org.voltdocket.diagnosis;

/** Standard that a cranking current is rated or measured by. */
public enum CrankingStandard {
    /** EN 50342-1. */
    EN("EN"),
    /** SAE J537. */
    SAE("SAE"),
    /** IEC 60095-1. */
    IEC("IEC"),
    /** DIN 43539-2. */
    DIN("DIN"),
    /** JIS D 5301. */
    JIS("JIS");

    private final String id;

    CrankingStandard(String id) {
        this.id = id;
    }

    /** The stable identifier used in JSON, CSV and the rule book. */
    public String id() {
        return id;
    }

    /**
     * The constant with this identifier.
     *
     * @throws IllegalArgumentException if there is none; the message lists those there are
     */
    public static CrankingStandard of(String id) {
        return Ids.find(values(), CrankingStandard::id, id);
    }
}
