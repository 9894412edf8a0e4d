package org.voltdocket.returned;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.BatterySerial;

/**
 * A returned battery as a list shows it.
 *
 * @param days whole days since it arrived
 * @param warnings as on arrival
 * @param caseNumber of the case its evidence joins
 * @param workshop name of the workshop that opened the case
 * @param place where it was put last
 * @param lot number of the lot it was drawn for
 * @param rank its place in that draw
 */
public record ReturnListItem(
        UUID id,
        String number,
        BatterySerial serial,
        Instant arrivedAt,
        long days,
        List<ArrivalWarning> warnings,
        Optional<String> pallet,
        Optional<String> caseNumber,
        Optional<String> workshop,
        Optional<String> place,
        boolean dangerous,
        Optional<String> lot,
        Optional<Integer> rank,
        Optional<BenchOutcome> outcome) {

    public ReturnListItem {
        warnings = List.copyOf(warnings);
    }
}
