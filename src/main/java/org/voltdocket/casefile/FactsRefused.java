package org.voltdocket.casefile;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.voltdocket.kernel.Vin;

/** Facts or keys that cannot be right. Answered 400, each member named. */
public final class FactsRefused extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient List<FieldError> errors;
    private final transient Optional<Vin> suggestion;

    FactsRefused(List<FieldError> errors, Optional<Vin> suggestion) {
        super(errors.stream().map(FieldError::message).collect(Collectors.joining(" ")));
        this.errors = List.copyOf(errors);
        this.suggestion = suggestion;
    }

    /** In the order of the request's members. */
    public List<FieldError> errors() {
        return errors;
    }

    /** The VIN that may have been misread; to be confirmed by a person. */
    public Optional<Vin> suggestion() {
        return suggestion;
    }
}
