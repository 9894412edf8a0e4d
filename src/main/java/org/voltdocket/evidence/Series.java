package org.voltdocket.evidence;

import java.util.List;
import java.util.Map;
import org.voltdocket.diagnosis.Recording.Mark;

/**
 * A section of a recording, reduced for drawing.
 *
 * @param from s, first row of the section
 * @param to s, last row of the section
 * @param rows rows of the recording from {@code from} to {@code to}
 * @param channels by channel identifier, in the order asked
 * @param marks the driver's notes within the stretch
 */
public record Series(double from, double to, long rows, Map<String, Line> channels, List<Mark> marks) {

    /**
     * One channel.
     *
     * @param t s, strictly increasing
     * @param v values in the channel's unit; null where a gap breaks the line
     */
    public record Line(List<Double> t, List<Float> v) {}
}
