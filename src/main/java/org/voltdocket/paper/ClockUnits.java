package org.voltdocket.paper;

import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.util.Locale;
import org.jfree.chart.axis.NumberTickUnit;
import org.jfree.chart.axis.TickUnitSource;
import org.jfree.chart.axis.TickUnits;

/** Ticks of a time axis in s at whole seconds, minutes and hours, written as m:ss or h:mm:ss. */
final class ClockUnits extends NumberFormat {

    private static final long serialVersionUID = 1L;

    private static final double[] STEPS = {
        0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400,
        172_800, 432_000, 864_000
    };

    static TickUnitSource source() {
        TickUnits units = new TickUnits();
        for (double step : STEPS) {
            units.add(new NumberTickUnit(step, new ClockUnits()));
        }
        return units;
    }

    @Override
    public StringBuffer format(double seconds, StringBuffer to, FieldPosition at) {
        long whole = Math.round(seconds * 10);
        long s = whole / 10;
        String text = s < 3600
                ? String.format(Locale.ROOT, "%d:%02d", s / 60, s % 60)
                : String.format(Locale.ROOT, "%d:%02d:%02d", s / 3600, s / 60 % 60, s % 60);
        return to.append(whole % 10 == 0 ? text : text + "." + whole % 10);
    }

    @Override
    public StringBuffer format(long seconds, StringBuffer to, FieldPosition at) {
        return format((double) seconds, to, at);
    }

    @Override
    public Number parse(String text, ParsePosition at) {
        throw new UnsupportedOperationException("axes are only written");
    }
}
