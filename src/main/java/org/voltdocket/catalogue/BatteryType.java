package org.voltdocket.catalogue;

import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;

/**
 * A type of battery as it is sold.
 *
 * @param code 1 to 30 of {@code A-Z 0-9 . _ -}; never reused
 * @param supplier code of its supplier
 * @param capacityAh nominal 20 h capacity, Ah, 1 to 400
 * @param ratedCrankingA rated cold cranking current, A, by {@code crankingStandard}; both null where not told
 * @param serialPrefix what every serial of the type begins with; null where the maker keeps to no form
 */
public record BatteryType(
        String code,
        String name,
        String supplier,
        Chemistry chemistry,
        double capacityAh,
        Double ratedCrankingA,
        CrankingStandard crankingStandard,
        String serialPrefix) {}
