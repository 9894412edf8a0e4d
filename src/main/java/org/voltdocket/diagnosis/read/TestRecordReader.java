package org.voltdocket.diagnosis.read;

import static org.voltdocket.diagnosis.read.RejectedFile.Reason.KIND_UNKNOWN;
import static org.voltdocket.diagnosis.read.RejectedFile.Reason.TEST_RECORD;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Reading;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.json.JsonFactory;

/** Reads a test record: one JSON object with its {@code kind}. */
public final class TestRecordReader {

    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();
    private static final List<String> KINDS = List.of("battery-test", "cranking-test", "charging-test");

    /** Members of a record that a person typed into a form: who, and that it was typed. They change no reading. */
    private static final List<String> TYPED_MEMBERS = List.of("origin", "enteredBy");

    private final FileErrors faults = new FileErrors();
    private final Instant now;

    /** @param now nothing can have been taken later, but for a day of clock error */
    public TestRecordReader(Instant now) {
        this.now = now;
    }

    public ReadResult read(byte[] bytes) {
        int wrong = Utf8.firstWrong(bytes, 0, bytes.length);
        if (wrong >= 0) {
            faults.add(() -> place(bytes, wrong));
            return faults.refuse(TEST_RECORD, "The file is not UTF-8. Save it as UTF-8 and upload it again.");
        }
        String text = new String(bytes, StandardCharsets.UTF_8);
        JsonMembers members = new JsonMembers(faults, now);
        try (JsonParser json =
                JSON.createParser(ObjectReadContext.empty(), text.startsWith("\uFEFF") ? text.substring(1) : text)) {
            if (json.nextToken() != JsonToken.START_OBJECT) {
                faults.add(() -> at(json.currentTokenLocation(), "A test record is one JSON object."));
            } else {
                object(json, members, "");
                if (json.nextToken() != null) {
                    faults.add(() -> at(json.currentTokenLocation(), "Something follows the object. Send one alone."));
                }
            }
        } catch (JacksonException e) {
            faults.add(() -> at(e.getLocation(), said(e)));
        }
        return faults.none() ? judged(members) : refused();
    }

    private void object(JsonParser json, JsonMembers members, String prefix) {
        while (json.nextToken() != JsonToken.END_OBJECT) {
            String told = json.currentName();
            // a dotted name outside the instrument is none of its members
            String name = prefix.isEmpty() && told.indexOf('.') >= 0 ? "\"" + told + "\"" : prefix + told;
            TokenStreamLocation at = json.currentTokenLocation();
            JsonToken token = json.nextToken();
            Object value = switch (token) {
                case VALUE_STRING -> json.getString();
                case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> Double.valueOf(json.getString());
                case VALUE_TRUE -> true;
                case VALUE_FALSE -> false;
                case VALUE_NULL -> null;
                default -> JsonMembers.STRUCTURE;
            };
            members.put(name, new JsonMembers.Member(value, at.getLineNr(), at.getColumnNr()));
            if (token == JsonToken.START_OBJECT && name.equals("instrument")) {
                object(json, members, "instrument.");
            } else {
                json.skipChildren();
            }
        }
    }

    private ReadResult judged(JsonMembers members) {
        String kind = members.text("kind", 200);
        if (kind == null && faults.none()) {
            members.missing("kind");
        }
        if (kind == null) {
            return faults.refuse(TEST_RECORD, "The object has no kind. Known kinds: " + String.join(", ", KINDS) + ".");
        }
        if (!KINDS.contains(kind)) {
            return new RejectedFile(
                    KIND_UNKNOWN,
                    "The test record's kind '" + (kind.length() > 60 ? kind.substring(0, 60) + "…" : kind)
                            + "' is not known. Known kinds: " + String.join(", ", KINDS) + ".");
        }
        members.known(TYPED_MEMBERS);
        OffsetDateTime takenAt = members.takenAt();
        Reading reading = switch (kind) {
            case "battery-test" -> battery(members, takenAt);
            case "cranking-test" -> cranking(members, takenAt);
            default -> charging(members, takenAt);
        };
        return faults.none()
                ? new ParsedFile(EvidenceKind.of(kind), "application/json", reading, members.ignored(), takenAt)
                : refused();
    }

    private BatteryTest battery(JsonMembers m, OffsetDateTime takenAt) {
        return new BatteryTest(
                takenAt,
                m.required(TestNumber.REST_VOLTAGE),
                m.required(TestNumber.BATTERY_TEMPERATURE),
                m.number(TestNumber.CRANKING_CURRENT),
                m.standard("crankingStandard"),
                m.number(TestNumber.INTERNAL_RESISTANCE),
                m.number(TestNumber.HOURS_SINCE_ENGINE_STOP),
                m.flag("chargedBefore"),
                m.instrument());
    }

    private CrankingTest cranking(JsonMembers m, OffsetDateTime takenAt) {
        return new CrankingTest(
                takenAt,
                m.required(TestNumber.MINIMUM_VOLTAGE),
                m.number(TestNumber.CRANKING_DURATION),
                m.required(TestNumber.BATTERY_TEMPERATURE),
                m.instrument());
    }

    private ChargingTest charging(JsonMembers m, OffsetDateTime takenAt) {
        if (!m.has("idleVoltageV") && !m.has("loadedVoltageV")) {
            m.missing("idleVoltageV or loadedVoltageV");
        }
        return new ChargingTest(
                takenAt,
                m.number(TestNumber.IDLE_VOLTAGE),
                m.number(TestNumber.LOADED_VOLTAGE),
                m.number(TestNumber.RIPPLE),
                m.required(TestNumber.ENGINE_BAY_TEMPERATURE),
                m.instrument());
    }

    private RejectedFile refused() {
        return faults.refuse(
                TEST_RECORD, "Nothing of the file was stored. Correct the listed errors and upload it again.");
    }

    private static String said(JacksonException e) {
        String said = e.getOriginalMessage();
        return said.startsWith("Duplicate")
                ? said.replace("Duplicate Object property", "The member") + " appears twice. Keep one."
                : "This is not valid JSON: " + said;
    }

    private static FileError at(TokenStreamLocation place, String message) {
        return place == null
                ? new FileError(1, 1, message)
                : new FileError(Math.max(1, place.getLineNr()), Math.max(1, place.getColumnNr()), message);
    }

    private static FileError place(byte[] bytes, int index) {
        long line = 1;
        int start = 0;
        for (int i = 0; i < index; i++) {
            if (bytes[i] == '\n') {
                line++;
                start = i + 1;
            }
        }
        return new FileError(
                line,
                Utf8.characters(bytes, start, index) + 1,
                String.format("The byte %02X is not valid UTF-8.", bytes[index]));
    }
}
