package org.voltdocket.evidence;

import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.kernel.RequestException;

/** The file was rejected. Nothing of it was stored; the trail records the rejection. */
public record Rejected(RejectedFile file) implements IntakeResult {

    /** The rejection as the answer to a script, with line and column of each error. */
    public RequestException exception() {
        return RequestException.of(file.reason().status(), file.reason().slug(), file.detail())
                .withErrors(file.errors(), file.more());
    }
}
