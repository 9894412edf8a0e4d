package org.voltdocket.server;

import java.util.regex.Pattern;
import org.springframework.boot.json.JsonWriter.Members;
import org.springframework.boot.logging.structured.StructuredLoggingJsonMembersCustomizer;

/** Takes whatever looks like a VIN out of structured log lines, stack traces too. */
public class VinMaskingEncoder implements StructuredLoggingJsonMembersCustomizer<Object> {

    private static final Pattern VIN = Pattern.compile("\\b[A-HJ-NPR-Z0-9]{17}\\b");

    @Override
    public void customize(Members<Object> members) {
        members.applyingValueProcessor((path, value) -> value instanceof CharSequence text ? mask(text) : value);
    }

    static String mask(CharSequence text) {
        return VIN.matcher(text).replaceAll("(VIN)");
    }
}
