package org.voltdocket.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Collects what is wrong in a file: the first {@value Refused#SHOWN} in full, the rest as a count. */
final class Faults {

    private final List<FileError> first = new ArrayList<>();
    private long total;

    void add(Supplier<FileError> fault) {
        if (total++ < Refused.SHOWN) {
            FileError error = fault.get();
            first.add(new FileError(error.line(), error.column(), Labels.printable(error.message())));
        }
    }

    boolean none() {
        return total == 0;
    }

    Refused refuse(Refused.Reason reason, String detail) {
        return new Refused(reason, detail, first, total);
    }
}
