package org.voltdocket.paper;

import java.awt.Color;
import java.util.List;

/**
 * Lines over time in one or more panels that share the time axis.
 *
 * @param alternative what it shows, in words, for those who do not see it
 * @param from s, left end
 * @param to s, right end
 * @param timeLabel name of the time axis
 * @param bands stretches shaded in every panel, each named in the key once
 * @param marks moments with a number, to be explained below the chart
 */
public record Chart(
        String alternative,
        double from,
        double to,
        String timeLabel,
        List<Panel> panels,
        List<Band> bands,
        List<Mark> marks) {

    public Chart {
        panels = List.copyOf(panels);
        bands = List.copyOf(bands);
        marks = List.copyOf(marks);
    }

    /**
     * One panel.
     *
     * @param label names its value axis, with the unit
     * @param cut what the value axis shows; null for all there is
     */
    public record Panel(String label, List<Line> lines, List<Limit> limits, Range cut) {}

    /** Stretch of a value axis. */
    public record Range(double low, double high) {}

    /**
     * One line; time in s, increasing; NaN breaks it.
     *
     * @param dashed distinguishes the line without colour
     */
    public record Line(String name, double[] timeS, double[] values, Color ink, boolean dashed) {}

    /** A limit across the panel, with its name for the key. */
    public record Limit(String name, double value) {}

    /** A shaded stretch, s. */
    public record Band(String name, double fromS, double toS, Color tint) {}

    /** A numbered moment, s. */
    public record Mark(int number, double atS) {}
}
