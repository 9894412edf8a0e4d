package org.voltdocket.casefile;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.voltdocket.kernel.FieldError;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Vin;

/** The reasons for which a request about a case is not carried out. */
final class CaseRefusals {

    private CaseRefusals() {}

    /** 409, without the number of the case. */
    static RequestException inOtherWorkshop() {
        return RequestException.of(
                409,
                CaseService.IN_OTHER_WORKSHOP,
                "This battery in this vehicle has a case with another workshop. Nothing was changed: ask the"
                        + " distributor to add your workshop to it.");
    }

    /** 409: the workshop has opened as many cases of this vehicle or battery as it may. */
    static RequestException tooManyOfOne(int most) {
        return RequestException.of(
                409,
                "too-many-of-one",
                "Your workshop has opened " + most
                        + " cases of this vehicle or of this battery, which is the limit. Nothing was"
                        + " changed. Check serial and VIN; if they are right, the distributor can open the case.");
    }

    /** 409: the personal data was erased, and what is added could not be told from what was erased. */
    static RequestException erased(CaseReference ref) {
        return RequestException.of(
                409,
                "case-erased",
                "The personal data of case " + ref.number()
                        + " was erased, and it accepts no change any more. Open a new"
                        + " case for the battery and the vehicle.");
    }

    /** 412: the case has another version than the request expects. */
    static RequestException changedSinceRead(CaseReference ref) {
        return RequestException.of(
                412,
                CaseService.CHANGED_SINCE_READ,
                "Case " + ref.number() + " was changed since you read it. Nothing was changed now: read it again and"
                        + " repeat what still applies.");
    }

    /** 409 with each fact that the case knows with another value. */
    static RequestException conflicting(CaseReference ref, List<FactConflict> conflicts) {
        return RequestException.of(
                        409,
                        CaseService.CONFLICTING_FACTS,
                        "Case " + ref.number() + " already exists with other values of "
                                + conflicts.stream().map(FactConflict::field).collect(Collectors.joining(", "))
                                + ". Nothing was changed: leave these out, or correct the case if it is wrong.")
                .withErrors(conflicts, 0)
                .with("case", ref.number().value());
    }

    /**
     * 400 with each invalid member.
     *
     * @param suggestion the VIN that may have been misread, for a person to confirm
     */
    static RequestException invalid(List<FieldError> errors, Optional<Vin> suggestion) {
        RequestException refused = RequestException.invalid(
                CaseService.INVALID_FACTS,
                errors.stream().map(FieldError::message).collect(Collectors.joining(" ")),
                errors);
        suggestion.ifPresent(vin -> refused.with("suggestion", vin.value()));
        return refused;
    }
}
