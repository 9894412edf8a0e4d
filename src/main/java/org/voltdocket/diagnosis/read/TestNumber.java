package org.voltdocket.diagnosis.read;

/**
 * A number in a test record, with the range that an instrument can show. Files and forms are checked by the same ranges,
 * which are part of the published format.
 */
public enum TestNumber {
    REST_VOLTAGE("restVoltageV", 0, 20, "V"),
    /** Of the battery, in a battery test and a cranking test. */
    BATTERY_TEMPERATURE("temperatureC", -40, 80, "°C"),
    CRANKING_CURRENT("crankingCurrentA", 0, 3000, "A"),
    INTERNAL_RESISTANCE("internalResistanceMilliohm", 0.1, 1000, "mΩ"),
    HOURS_SINCE_ENGINE_STOP("hoursSinceEngineStop", 0, 87_600, "h"),
    MINIMUM_VOLTAGE("minimumVoltageV", 0, 20, "V"),
    CRANKING_DURATION("durationS", 0.01, 120, "s"),
    IDLE_VOLTAGE("idleVoltageV", 0, 20, "V"),
    LOADED_VOLTAGE("loadedVoltageV", 0, 20, "V"),
    RIPPLE("ripplePeakToPeakV", 0, 10, "V"),
    /** In a charging test, with the engine running. */
    ENGINE_BAY_TEMPERATURE("temperatureC", -40, 120, "°C");

    private final String id;
    private final PlausibleRange range;

    TestNumber(String id, double low, double high, String unit) {
        this.id = id;
        this.range = new PlausibleRange(low, high, unit);
    }

    /** The name of the member, the same in JSON and in forms. */
    public String id() {
        return id;
    }

    /** The values that are taken, and their unit. */
    public PlausibleRange range() {
        return range;
    }
}
