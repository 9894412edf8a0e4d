package org.voltdocket.diagnosis.quantity;

import java.util.ArrayList;
import java.util.List;

/** The sensor's offset by a drive against the one by a night's rest: two items of evidence that must agree. */
public final class OffsetWays {

    private static final List<String> DRIVING = List.of("sensor-offset-by-clamp", "sensor-offset-together");
    private static final String RESTING = "sensor-at-rest";

    private OffsetWays() {}

    /** Each drive's offset less each rest's, with the drive as its evidence; nothing where one of the two is not there. */
    public static List<Measurement> across(List<Measurement> measured) {
        List<Measurement> out = new ArrayList<>();
        for (Measurement driving : measured) {
            if (DRIVING.contains(driving.quantity())) {
                for (Measurement resting : measured) {
                    if (resting.quantity().startsWith(RESTING)) {
                        out.add(Measurement.of(
                                "offset-drive-and-rest-disagree",
                                driving.evidence(),
                                SensorWays.apart(driving.value(), resting.value())));
                    }
                }
            }
        }
        return out;
    }
}
