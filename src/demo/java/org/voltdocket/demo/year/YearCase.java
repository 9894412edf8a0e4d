package org.voltdocket.demo.year;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Vin;

/**
 * One planned case.
 *
 * @param number its place in the year, from 0, in the order of claiming
 * @param claimedAt when the workshop opens it and claims
 * @param decidedAt when the clerk decides; absent where the claim is still open
 * @param returnedAt when the battery arrives at the distributor's bench; absent where it was not sent back
 * @param seed of what its tests show
 */
record YearCase(
        int number,
        BatterySerial serial,
        Vin vin,
        Facts facts,
        YearWorkshop garage,
        BatteryProduct make,
        LocalDate soldOn,
        YearFault trouble,
        Instant claimedAt,
        Optional<Instant> decidedAt,
        Optional<Instant> returnedAt,
        long seed) {}
