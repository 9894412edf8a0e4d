package org.voltdocket.demo;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;

/** A test record as a JSON file. */
public final class TestFile {

    private final StringBuilder out = new StringBuilder();

    private TestFile(String kind, OffsetDateTime takenAt) {
        out.append("{\"kind\":\"").append(kind).append('"');
        text("takenAt", DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(takenAt));
    }

    public static byte[] json(BatteryTest test) {
        TestFile file = new TestFile("battery-test", test.takenAt());
        file.number("restVoltageV", test.restVoltageV());
        file.number("temperatureC", test.temperatureC());
        file.number("crankingCurrentA", test.crankingCurrentA());
        if (test.crankingStandard() != null) {
            file.text("crankingStandard", test.crankingStandard().id());
        }
        file.number("internalResistanceMilliohm", test.internalResistanceMilliohm());
        file.number("hoursSinceEngineStop", test.hoursSinceEngineStop());
        if (test.chargedBefore() != null) {
            file.out.append(",\"chargedBefore\":").append(test.chargedBefore());
        }
        return file.done(test.instrument());
    }

    public static byte[] json(CrankingTest test) {
        TestFile file = new TestFile("cranking-test", test.takenAt());
        file.number("minimumVoltageV", test.minimumVoltageV());
        file.number("durationS", test.durationS());
        file.number("temperatureC", test.temperatureC());
        return file.done(test.instrument());
    }

    public static byte[] json(ChargingTest test) {
        TestFile file = new TestFile("charging-test", test.takenAt());
        file.number("idleVoltageV", test.idleVoltageV());
        file.number("loadedVoltageV", test.loadedVoltageV());
        file.number("ripplePeakToPeakV", test.ripplePeakToPeakV());
        file.number("temperatureC", test.temperatureC());
        return file.done(test.instrument());
    }

    private void number(String name, Double value) {
        if (value != null) {
            String plain = BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
            out.append(",\"").append(name).append("\":").append(plain);
        }
    }

    private void text(String name, String value) {
        out.append(",\"").append(name).append("\":\"").append(value).append('"');
    }

    private byte[] done(BatteryTest.Instrument instrument) {
        if (instrument != null) {
            out.append(",\"instrument\":{\"serial\":\"").append(instrument.serial());
            out.append("\",\"calibratedOn\":\"")
                    .append(instrument.calibratedOn())
                    .append("\"}");
        }
        return out.append("}\n").toString().getBytes(UTF_8);
    }
}
