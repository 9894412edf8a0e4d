package org.voltdocket.claim.repository;

import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;

/**
 * What a workshop gives to one thing that was asked for.
 *
 * @param position of the thing in the list, from 1
 * @param evidence an item that the case holds already
 * @param words null where there are none
 */
public record RequestedItemAnswer(int position, Optional<UUID> evidence, String words) {

    public RequestedItemAnswer {
        words = words == null || words.isBlank() ? null : words.strip();
    }

    /** @throws RequestException if it says nothing, or its words cannot be kept */
    public void check() {
        if (evidence.isEmpty() && words == null) {
            throw RequestException.invalid(
                    "claim-refused", "file", "a file or a word on it is missing: nothing was sent for this item");
        }
        FreeText.optional("claim-refused", "words", words);
    }
}
