package org.voltdocket.secondmodel;

/**
 * The unit that commands the charging source. It sees what the vehicle reports, never the truth.
 *
 * <p>Invented in the style of the trade: a conventional regulator with a set point by temperature; a charge window with
 * recuperation (coasting 14.8 to 15.2 V, cruise 12.6 to 13.2 V at about no current, acceleration 12.3 V); an economy
 * mode at 12.5 to 13.1 V while the battery is at 0 to 80 °C, its current within −8 to +15 A and its charge at least
 * 80 %, left for headlamps, wipers and heating.
 */
final class Control {

    enum Style {
        CONVENTIONAL,
        WINDOW,
        ECONOMY
    }

    /** What the unit sees: celsius of the battery, reported current A, reported charge 0 to 1. */
    record View(
            DriveCycle.Phase phase,
            double speed,
            double celsius,
            double current,
            double charge,
            boolean heavyLoad,
            double sinceStart) {}

    final Style style;
    final double high;
    final double low;
    final double target;
    final double perKelvin;
    /** Never asks for charging, whatever it sees (holds no current, or lets the battery give 3 A); the source's own default holds for the first {@code defaultS}. */
    final boolean stuck;

    final double defaultS;
    private double setPoint;
    private double trim;

    Control(Style style, double high, double low, double target, double perKelvin, boolean stuck, double defaultS) {
        this.style = style;
        this.high = high;
        this.low = low;
        this.target = target;
        this.perKelvin = perKelvin;
        this.stuck = stuck;
        this.defaultS = defaultS;
        this.setPoint = style == Style.CONVENTIONAL ? high : low;
    }

    /** The set point after {@code dt} s more, V; it slews by 0.4 V/s at most. */
    double setPoint(View view, double dt) {
        double wish = wish(view, dt);
        setPoint += Math.max(-0.4 * dt, Math.min(0.4 * dt, wish - setPoint));
        return setPoint;
    }

    private double wish(View view, double dt) {
        double full = high - perKelvin * (view.celsius() - 25);
        if (view.sinceStart() < defaultS) {
            return Math.min(full, 14.3);
        }
        if (stuck) {
            return held(view, defaultS > 19 ? -3 : 0, dt);
        }
        return switch (style) {
            case CONVENTIONAL -> full;
            case ECONOMY -> economy(view, full, dt);
            case WINDOW -> window(view, full, dt);
        };
    }

    private double economy(View view, double full, double dt) {
        boolean rests = view.celsius() > 0
                && view.celsius() < 80
                && view.current() > -8
                && (view.current() < 15 || view.charge() >= 0.88)
                && view.charge() >= 0.80
                && !view.heavyLoad();
        return rests ? held(view, 0, dt) : full;
    }

    private double window(View view, double full, double dt) {
        if (view.charge() < target - 0.08) {
            return full;
        }
        if (view.phase() == DriveCycle.Phase.COAST && view.speed() > 15 && view.charge() < target + 0.10) {
            return Math.min(15.2, high + 0.4);
        }
        if (view.phase() == DriveCycle.Phase.ACCELERATE && view.charge() > target - 0.04) {
            return 12.3;
        }
        double pull = view.charge() < target ? 4 : view.charge() > target + 0.03 ? -5 : 0;
        return held(view, pull, dt);
    }

    /** Keeps the reported current near {@code pull} A by slow steps of the set point. */
    private double held(View view, double pull, double dt) {
        trim += 0.01 * (pull - view.current()) * dt;
        trim = Math.max(12.2 - low, Math.min(13.4 - low, trim));
        return low + trim;
    }
}
