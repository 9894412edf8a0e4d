package org.voltdocket.diagnosis.read;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CrankingStandard;

/** The members of a test record with their places; reading one takes it off the list of those ignored. */
final class JsonMembers {

    private static final Instant CLOCK_NOT_SET = Instant.parse("2000-01-01T00:00:00Z");

    /**
     * @param value a String, Double, Boolean, null, or {@link JsonMembers#STRUCTURE} for an object or array
     */
    record Member(Object value, long line, int column) {}

    static final Object STRUCTURE = new Object();

    private final Map<String, Member> members = new LinkedHashMap<>();
    private final List<String> taken = new ArrayList<>();
    private final FileErrors faults;
    private final Instant now;

    JsonMembers(FileErrors faults, Instant now) {
        this.faults = faults;
        this.now = now;
    }

    void put(String name, Member member) {
        members.put(name, member);
    }

    boolean has(String name) {
        Member member = members.get(name);
        return member != null && member.value() != null;
    }

    /** Members that nothing asked for, in the order of the file. */
    List<String> ignored() {
        return members.keySet().stream()
                .filter(name -> !taken.contains(name))
                .map(TextCleaner::printable)
                .map(name -> name.length() <= 60 ? name : name.substring(0, 60) + "…")
                .limit(200)
                .toList();
    }

    /** Takes members off the list of those ignored without reading them. */
    void known(List<String> names) {
        taken.addAll(names);
    }

    double required(TestNumber member) {
        Double value = number(member);
        if (value == null && !has(member.id())) {
            missing(member.id());
        }
        return value == null ? Double.NaN : value;
    }

    Double number(TestNumber number) {
        String name = number.id();
        PlausibleRange range = number.range();
        Member member = take(name);
        if (member == null) {
            return null;
        }
        if (!(member.value() instanceof Double value)) {
            wrong(name, member, "must be a number in " + range.unit() + ", without quotes");
            return null;
        }
        if (!range.holds(value)) {
            String hint = range.unit().equals("V") && value > range.high() ? "; only 12 V systems are judged here" : "";
            wrong(
                    name,
                    member,
                    "is " + value + ", and no instrument shows that: " + range.low() + " to " + range.high() + " "
                            + range.unit() + " is possible" + hint);
            return null;
        }
        return value;
    }

    Boolean flag(String name) {
        Member member = take(name);
        if (member != null && !(member.value() instanceof Boolean)) {
            wrong(name, member, "must be true or false, without quotes");
            return null;
        }
        return member == null ? null : (Boolean) member.value();
    }

    String text(String name, int most) {
        Member member = take(name);
        if (member == null) {
            return null;
        }
        if (!(member.value() instanceof String value)
                || value.isBlank()
                || value.strip().length() > most) {
            wrong(name, member, "must be a text of 1 to " + most + " characters");
            return null;
        }
        return value.strip();
    }

    CrankingStandard standard(String name) {
        String id = text(name, 40);
        try {
            return id == null ? null : CrankingStandard.of(id.toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            wrong(name, members.get(name), "is '" + id + "'; known are EN, SAE, IEC, DIN and JIS");
            return null;
        }
    }

    OffsetDateTime takenAt() {
        String name = "takenAt";
        String text = text(name, 60);
        if (text == null) {
            if (!has(name)) {
                missing(name);
            }
            return null;
        }
        try {
            OffsetDateTime at = OffsetDateTime.parse(text);
            if (at.toInstant().isAfter(now.plus(1, ChronoUnit.DAYS))) {
                wrong(name, members.get(name), "is in the future. Set the clock of the instrument");
            } else if (at.toInstant().isBefore(CLOCK_NOT_SET)) {
                wrong(name, members.get(name), "is before the year 2000. Set the clock of the instrument");
            }
            return at;
        } catch (DateTimeException e) {
            wrong(
                    name,
                    members.get(name),
                    "is not a date and time with offset; write it like 2026-03-04T08:40:00+01:00");
            return null;
        }
    }

    BatteryTest.Instrument instrument() {
        Member whole = take("instrument");
        if (whole == null) {
            return null;
        }
        if (whole.value() != STRUCTURE) {
            wrong("instrument", whole, "must be an object such as {\"serial\":\"T-100\"}");
            return null;
        }
        String serial = text("instrument.serial", 100);
        String day = text("instrument.calibratedOn", 40);
        LocalDate calibratedOn = null;
        try {
            calibratedOn = day == null ? null : LocalDate.parse(day);
        } catch (DateTimeException e) {
            wrong(
                    "instrument.calibratedOn",
                    members.get("instrument.calibratedOn"),
                    "is not a date such as 2025-11-01");
        }
        if (calibratedOn != null
                && calibratedOn.isAfter(
                        now.atOffset(ZoneOffset.UTC).toLocalDate().plusDays(1))) {
            wrong("instrument.calibratedOn", members.get("instrument.calibratedOn"), "is in the future");
        }
        return new BatteryTest.Instrument(serial, calibratedOn);
    }

    void missing(String name) {
        faults.add(() -> new FileError(1, 1, "The member " + name + " is missing. It is required."));
    }

    void wrong(String name, Member member, String what) {
        faults.add(() -> new FileError(member.line(), member.column(), name + " " + what + "."));
    }

    private Member take(String name) {
        taken.add(name);
        return has(name) ? members.get(name) : null;
    }
}
