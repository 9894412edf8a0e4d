package org.voltdocket.catalogue;

import java.util.List;
import org.voltdocket.kernel.RequestException;

/**
 * An error in a catalogue file.
 *
 * @param line line of the file, from 1
 * @param column where on that line the cell begins, in characters from 1
 * @param message what is wrong and what would be right
 */
record FileError(long line, int column, String message) {

    private static final int MAX_SHOWN = 20;

    FileError(long line, String message) {
        this(line, 1, message);
    }

    /** The refusal (422) of a file, with its first 20 errors. */
    static RequestException refused(List<FileError> errors) {
        int shown = Math.min(MAX_SHOWN, errors.size());
        return RequestException.of(
                        422,
                        "catalogue-refused",
                        "Nothing of the file was stored; the catalogue is unchanged. Correct what is named and send the whole"
                                + " file again. First: line " + errors.get(0).line() + ": "
                                + errors.get(0).message())
                .withErrors(List.copyOf(errors.subList(0, shown)), errors.size() - shown);
    }

    static RequestException refused(long line, String message) {
        return refused(List.of(new FileError(line, message)));
    }
}
