package org.voltdocket.evidence.storage;

import java.io.StringWriter;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.read.TestRecordReader;
import tools.jackson.core.JsonGenerator;
import tools.jackson.core.ObjectWriteContext;
import tools.jackson.core.json.JsonFactory;

/**
 * Writes a test as canonical JSON: members in one fixed order, absent ones left out, numbers in Java's shortest form.
 * What {@link TestRecordReader} reads from it equals what was written.
 */
public final class TestRecordWriter {

    private static final JsonFactory JSON = new JsonFactory();

    private TestRecordWriter() {}

    /** @throws IllegalArgumentException for a recording, which is kept in blocks instead */
    public static String write(Reading reading) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = JSON.createGenerator(ObjectWriteContext.empty(), text)) {
            json.writeStartObject();
            json.writeStringProperty("kind", reading.kind().id());
            if (reading instanceof BatteryTest test) {
                battery(json, test);
            } else if (reading instanceof CrankingTest test) {
                takenAt(json, test.takenAt());
                number(json, "minimumVoltageV", test.minimumVoltageV());
                number(json, "durationS", test.durationS());
                number(json, "temperatureC", test.temperatureC());
                instrument(json, test.instrument());
            } else if (reading instanceof ChargingTest test) {
                takenAt(json, test.takenAt());
                number(json, "idleVoltageV", test.idleVoltageV());
                number(json, "loadedVoltageV", test.loadedVoltageV());
                number(json, "ripplePeakToPeakV", test.ripplePeakToPeakV());
                number(json, "temperatureC", test.temperatureC());
                instrument(json, test.instrument());
            } else {
                throw new IllegalArgumentException("not a test record: " + reading.kind());
            }
            json.writeEndObject();
        }
        return text.toString();
    }

    private static void battery(JsonGenerator json, BatteryTest test) {
        takenAt(json, test.takenAt());
        number(json, "restVoltageV", test.restVoltageV());
        number(json, "temperatureC", test.temperatureC());
        number(json, "crankingCurrentA", test.crankingCurrentA());
        if (test.crankingStandard() != null) {
            json.writeStringProperty("crankingStandard", test.crankingStandard().id());
        }
        number(json, "internalResistanceMilliohm", test.internalResistanceMilliohm());
        number(json, "hoursSinceEngineStop", test.hoursSinceEngineStop());
        if (test.chargedBefore() != null) {
            json.writeBooleanProperty("chargedBefore", test.chargedBefore());
        }
        instrument(json, test.instrument());
    }

    private static void takenAt(JsonGenerator json, OffsetDateTime at) {
        json.writeStringProperty("takenAt", DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(at));
    }

    private static void number(JsonGenerator json, String name, Double value) {
        if (value != null) {
            json.writeNumberProperty(name, value);
        }
    }

    private static void instrument(JsonGenerator json, BatteryTest.Instrument instrument) {
        if (instrument == null) {
            return;
        }
        json.writeObjectPropertyStart("instrument");
        if (instrument.serial() != null) {
            json.writeStringProperty("serial", instrument.serial());
        }
        if (instrument.calibratedOn() != null) {
            json.writeStringProperty("calibratedOn", instrument.calibratedOn().toString());
        }
        json.writeEndObject();
    }
}
