package org.voltdocket.ui;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import org.springframework.context.MessageSource;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** What templates say of identifiers, numbers and times; in templates {@code @words}. */
@Component("words")
public class TextFormatter {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern(
                    "d MMM yyyy, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    private final MessageSource messages;
    private final Clock clock = Clock.systemUTC();

    TextFormatter(MessageSource messages) {
        this.messages = messages;
    }

    /** The label of an identifier, or the identifier itself where no bundle knows it. */
    public String of(String group, String id) {
        return id == null ? "" : messages.getMessage(group + "." + id, null, id, locale());
    }

    /** Whether a bundle has a label for this identifier. */
    public boolean knows(String group, String id) {
        return messages.getMessage(group + "." + id, null, null, locale()) != null;
    }

    /** A number to four significant digits and no more than three decimals; a dash for null. */
    public String number(Double value) {
        return value == null ? "–" : NumberFormatter.plain(value);
    }

    /** A probability, 0 to 1, in per cent; never 0 or 100 where it is not exactly that. */
    public String percent(double probability) {
        return NumberFormatter.percent(probability);
    }

    /** A weight in decibans with its sign. */
    public String decibans(double decibans) {
        return NumberFormatter.signed(decibans);
    }

    /** What a weight in decibans means: so many times likelier or less likely. */
    public String odds(double decibans) {
        double ratio = Math.pow(10, Math.abs(decibans) / 10);
        if (ratio < 1.05) {
            return say("weight.neutral");
        }
        return say(decibans > 0 ? "weight.for" : "weight.against", NumberFormatter.ratio(ratio));
    }

    /** A quantity's name without its number. */
    public String bare(String quantity) {
        return quantity.replaceAll("/\\d+$", "");
    }

    /** A member of a test record: numbers rounded, yes or no in words. */
    public String member(Object value) {
        if (value instanceof Number number) {
            return NumberFormatter.plain(number.doubleValue());
        }
        return value instanceof Boolean yes ? of("yes-no", yes.toString()) : String.valueOf(value);
    }

    /** Details of a trail entry on one line; a change as what was and what is. */
    public String details(Map<String, ?> details) {
        return details.entrySet().stream()
                .map(e -> of("fact", e.getKey()) + ": " + detail(e.getValue()))
                .collect(Collectors.joining(" · "));
    }

    private String detail(Object value) {
        if (value instanceof Map<?, ?> change && change.containsKey("old") && change.containsKey("new")) {
            return detail(change.get("old")) + " → " + detail(change.get("new"));
        }
        if (value instanceof Map<?, ?> members) {
            return members.entrySet().stream()
                    .map(e -> e.getKey() + " " + detail(e.getValue()))
                    .collect(Collectors.joining(", "));
        }
        if (value instanceof Collection<?> list) {
            return list.stream().map(this::detail).collect(Collectors.joining("; "));
        }
        return value == null ? of("fact", "unknown") : String.valueOf(value);
    }

    /** Bytes in kB, MB or GB. */
    public String bytes(long bytes) {
        if (bytes < 1000) {
            return bytes + " B";
        }
        if (bytes >= 1_000_000_000) {
            return NumberFormatter.plain(bytes / 1e9) + " GB";
        }
        return bytes < 1_000_000
                ? NumberFormatter.plain(bytes / 1e3) + " kB"
                : NumberFormatter.plain(bytes / 1e6) + " MB";
    }

    /** Seconds as m:ss or h:mm:ss. */
    public String clock(double seconds) {
        long s = Math.round(seconds);
        return s < 3600
                ? String.format(Locale.ROOT, "%d:%02d", s / 60, s % 60)
                : String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
    }

    /** A moment as day and time, UTC. */
    public String moment(Instant at) {
        return at == null ? "–" : MOMENT.format(at);
    }

    /** A day. */
    public String day(LocalDate day) {
        return DAY.format(day);
    }

    /** How long ago, in the largest unit that counts. */
    public String age(Instant at) {
        Duration since = Duration.between(at, clock.instant());
        if (since.toMinutes() < 1) {
            return say("age.now");
        }
        if (since.toHours() < 1) {
            return say("age.minutes", since.toMinutes());
        }
        return since.toDays() < 1 ? say("age.hours", since.toHours()) : say("age.days", since.toDays());
    }

    /** A sentence of the bundles with its arguments. */
    public String say(String code, Object... arguments) {
        return messages.getMessage(code, arguments, locale());
    }

    private static Locale locale() {
        return LocaleContextHolder.getLocale();
    }
}
