package org.voltdocket.dossier;

import java.util.LinkedHashMap;
import java.util.Map;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Reading;

/** The values of a test record by member name; absent members are left out. */
public final class ReadingFields {

    private final Map<String, Object> members = new LinkedHashMap<>();

    private ReadingFields() {}

    /** Members in the order of the record; empty for a recording. */
    public static Map<String, Object> of(Reading reading) {
        ReadingFields text = new ReadingFields();
        if (reading instanceof BatteryTest t) {
            text.put("restVoltageV", t.restVoltageV());
            text.put("temperatureC", t.temperatureC());
            text.put("crankingCurrentA", t.crankingCurrentA());
            text.put(
                    "crankingStandard",
                    t.crankingStandard() == null ? null : t.crankingStandard().id());
            text.put("internalResistanceMilliohm", t.internalResistanceMilliohm());
            text.put("hoursSinceEngineStop", t.hoursSinceEngineStop());
            text.put("chargedBefore", t.chargedBefore());
            text.instrument(t.instrument());
        } else if (reading instanceof CrankingTest t) {
            text.put("minimumVoltageV", t.minimumVoltageV());
            text.put("durationS", t.durationS());
            text.put("temperatureC", t.temperatureC());
            text.instrument(t.instrument());
        } else if (reading instanceof ChargingTest t) {
            text.put("idleVoltageV", t.idleVoltageV());
            text.put("loadedVoltageV", t.loadedVoltageV());
            text.put("ripplePeakToPeakV", t.ripplePeakToPeakV());
            text.put("temperatureC", t.temperatureC());
            text.instrument(t.instrument());
        }
        return text.members;
    }

    private void instrument(BatteryTest.Instrument instrument) {
        if (instrument != null) {
            put("instrument.serial", instrument.serial());
            put("instrument.calibratedOn", instrument.calibratedOn());
        }
    }

    private void put(String name, Object value) {
        if (value != null) {
            members.put(name, value);
        }
    }
}
