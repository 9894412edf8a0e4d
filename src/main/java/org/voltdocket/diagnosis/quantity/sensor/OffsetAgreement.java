package org.voltdocket.diagnosis.quantity.sensor;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.quantity.Measurement;

/** Compares the sensor offset from a drive with the one from a standing recording. */
public final class OffsetAgreement {

    private static final List<String> DRIVING = List.of("sensor-offset-by-clamp", "sensor-offset-together");
    private static final String RESTING = "sensor-at-rest";

    private OffsetAgreement() {}

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
                                OffsetWithoutClamp.apart(driving.value(), resting.value())));
                    }
                }
            }
        }
        return out;
    }
}
