package org.voltdocket.returned;

import java.util.List;
import org.springframework.http.HttpStatus;
import org.springframework.http.HttpStatusCode;
import org.springframework.http.ProblemDetail;
import org.springframework.web.ErrorResponse;
import org.voltdocket.ui.ProblemDetails;

/** What was asked for does not fit how things stand with a returned battery. Answered 409; nothing was changed. */
public final class ReturnConflictException extends RuntimeException implements ErrorResponse {

    private static final long serialVersionUID = 1L;

    private final String slug;
    private final String title;
    private final transient List<String> blockedBy;

    private ReturnConflictException(String slug, String title, String detail, List<String> blockedBy) {
        super(detail);
        this.slug = slug;
        this.title = title;
        this.blockedBy = List.copyOf(blockedBy);
    }

    /** Evidence lies in cases, and this battery has none. */
    static ReturnConflictException noCase(ReturnedBattery battery) {
        return new ReturnConflictException(
                "return-without-case",
                "The battery has no case",
                "Evidence is kept in the case of a battery and its vehicle, and " + battery.serial()
                        + " has none. Nothing was kept: let a clerk open the case with the vehicle's VIN, then send it again.",
                List.of());
    }

    /** The case of a return is settled by its first evidence. */
    static ReturnConflictException caseIsFixed(ReturnedBattery battery) {
        return new ReturnConflictException(
                "return-case-fixed",
                "The case of this return is settled",
                "Bench evidence lies in case " + battery.file().orElseThrow().number() + " already, so "
                        + battery.number() + " stays with it. Nothing was changed.",
                List.of());
    }

    /** The procedure does not allow the step now. */
    static ReturnConflictException step(String why, List<String> blockedBy) {
        return new ReturnConflictException(
                "bench-step-refused", "The bench procedure does not allow this step now", why, blockedBy);
    }

    /** No lot can be made of what is there. */
    static ReturnConflictException noLot(String why) {
        return new ReturnConflictException("lot-refused", "No lot can be drawn", why, List.of());
    }

    /** A pallet none of whose batteries is booked in. */
    public static ReturnConflictException nothingToPrint(String pallet) {
        return new ReturnConflictException(
                "nothing-to-print",
                "There is nothing to print yet",
                "No battery of pallet " + pallet
                        + " is booked in. Scan them first; a label carries the number that a battery"
                        + " gets when it is booked in.",
                List.of());
    }

    /** A pallet's number is taken. */
    static ReturnConflictException palletKnown(String number) {
        return new ReturnConflictException(
                "pallet-known",
                "There is a pallet of this number already",
                "Pallet " + number
                        + " is listed already; its list stays as it is. Nothing was changed: give this one another"
                        + " number.",
                List.of());
    }

    @Override
    public HttpStatusCode getStatusCode() {
        return HttpStatus.CONFLICT;
    }

    @Override
    public ProblemDetail getBody() {
        ProblemDetail problem = ProblemDetails.of(HttpStatus.CONFLICT, slug, title, getMessage());
        if (!blockedBy.isEmpty()) {
            problem.setProperty("blockedBy", blockedBy);
        }
        return problem;
    }
}
