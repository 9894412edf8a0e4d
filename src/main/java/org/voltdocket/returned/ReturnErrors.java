package org.voltdocket.returned;

import java.util.List;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;

/** The refusals of this package: code, status and text of each. */
public final class ReturnErrors {

    private static final String INVALID = "return-refused";
    private static final int CONFLICT = 409;

    private ReturnErrors() {}

    /** A member of a request or form is missing or invalid. */
    public static RequestException invalid(String field, String message) {
        return RequestException.invalid(INVALID, field, message);
    }

    /** @param errors at least one */
    public static RequestException invalid(List<FieldError> errors) {
        return RequestException.invalid(INVALID, errors.get(0).message(), errors);
    }

    /** Bench evidence is stored in a case, and this battery has none. */
    public static RequestException noCase(ReturnedBattery battery) {
        return conflict(
                "return-without-case",
                "Evidence is stored in the case of a battery and its vehicle, and " + battery.serial()
                        + " has none. Nothing was stored. Ask a clerk to open the case with the VIN, then send the file again.");
    }

    /** The first bench evidence fixes the case of a return. */
    public static RequestException caseFixed(ReturnedBattery battery) {
        return conflict(
                "return-case-fixed",
                "Case " + battery.file().orElseThrow().number() + " already holds bench evidence of " + battery.number()
                        + ", so the return stays with it. Nothing was changed.");
    }

    /**
     * The procedure does not allow the step now.
     *
     * @param blockedBy ids of the steps that must be done first, or {@code condition}; may be empty
     */
    static RequestException stepNotAllowed(String why, List<String> blockedBy) {
        RequestException refused = conflict("bench-step-refused", why);
        return blockedBy.isEmpty() ? refused : refused.with("blockedBy", blockedBy);
    }

    /** No lot can be drawn. */
    public static RequestException noLot(String why) {
        return conflict("lot-refused", why);
    }

    /** No battery of the pallet is registered yet. */
    public static RequestException nothingToPrint(String pallet) {
        return conflict(
                "nothing-to-print",
                "No battery of pallet " + pallet + " is registered. Scan the batteries first: a label shows the number"
                        + " that a battery gets when it is registered.");
    }

    /** The number of the pallet is taken. */
    public static RequestException palletExists(String number) {
        return conflict(
                "pallet-known",
                "Pallet " + number + " already exists and keeps its list. Nothing was changed. Choose another number.");
    }

    private static RequestException conflict(String code, String message) {
        return RequestException.of(CONFLICT, code, message);
    }
}
