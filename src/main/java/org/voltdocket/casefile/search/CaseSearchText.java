package org.voltdocket.casefile.search;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.voltdocket.kernel.CaseNumber;

/**
 * What a text typed into a search field may mean: part of a battery serial, a case number, or a VIN. Blanks and case do not
 * matter; for a VIN, hyphens neither.
 *
 * @param serialPart 1 to 40 characters; 1 or 2 characters mean the beginning or the end of a serial, longer texts any part of it
 * @param vin a whole VIN, or its last 6 or 8 characters
 */
public record CaseSearchText(Optional<String> serialPart, Optional<CaseNumber> number, Optional<String> vin) {

    private static final Pattern SERIAL_PART = Pattern.compile("[A-Z0-9./-]{1,40}");
    private static final int VIN_LENGTH = 17;

    /** The possible meanings of a text. */
    public static CaseSearchText of(String typed) {
        String text = typed.replaceAll("\\s+", "").toUpperCase(Locale.ROOT);
        return new CaseSearchText(
                Optional.of(text).filter(part -> SERIAL_PART.matcher(part).matches()),
                number(typed),
                vin(text.replace("-", "")));
    }

    /** Whether no case can be found by the text. */
    public boolean isMeaningless() {
        return serialPart.isEmpty() && number.isEmpty() && vin.isEmpty();
    }

    private static Optional<CaseNumber> number(String typed) {
        try {
            return Optional.of(CaseNumber.parse(typed));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Optional<String> vin(String text) {
        return switch (text.length()) {
            case 6, 8, VIN_LENGTH -> Optional.of(text);
            // labels with the data identifier I before the VIN
            case VIN_LENGTH + 1 ->
                Optional.of(text).filter(label -> label.startsWith("I")).map(label -> label.substring(1));
            default -> Optional.empty();
        };
    }
}
