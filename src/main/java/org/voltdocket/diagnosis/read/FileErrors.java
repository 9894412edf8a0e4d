package org.voltdocket.diagnosis.read;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Collects the errors of a file: the first {@value RejectedFile#SHOWN} in full, the rest as a count. */
final class FileErrors {

    private final List<FileError> first = new ArrayList<>();
    private long total;

    void add(Supplier<FileError> fault) {
        if (total++ < RejectedFile.SHOWN) {
            FileError error = fault.get();
            first.add(new FileError(error.line(), error.column(), TextCleaner.printable(error.message())));
        }
    }

    boolean none() {
        return total == 0;
    }

    RejectedFile refuse(RejectedFile.Reason reason, String detail) {
        return new RejectedFile(reason, detail, first, total);
    }
}
