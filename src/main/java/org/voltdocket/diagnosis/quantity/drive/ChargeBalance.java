package org.voltdocket.diagnosis.quantity.drive;

import java.util.Optional;
import org.voltdocket.diagnosis.quantity.RestVoltage;
import org.voltdocket.kernel.Interval;

/** State of charge at start and end, the charge moved between, and what of it falls to each start and kilometre. */
final class ChargeBalance {

    /** Less than this is no drive to reckon by, km. */
    private static final double SHORTEST_KM = 1;
    /** How the capacity that a battery has differs from its nominal one, and from a usual one, standard error (ours). */
    private static final double AGED_CAPACITY = 0.2;

    private static final double UNKNOWN_CAPACITY = 0.35;

    private final DriveContext context;

    private ChargeBalance(DriveContext context) {
        this.context = context;
    }

    static void measure(DriveContext context) {
        new ChargeBalance(context).charge();
    }

    private void charge() {
        context.rested.ifPresent(r -> context.add("rest-left", r.left()));
        context.socStart.ifPresent(soc -> {
            context.estimates.put("socStartPct", soc);
            context.add("charge-before-drive", soc);
        });
        Optional<Interval> net = net();
        net.ifPresent(moved -> {
            context.estimates.put("netChargeAh", moved);
            perUse(moved);
        });
        Optional<Interval> rested = Relaxation.after(context.drive)
                .filter(r -> !RestVoltage.belowTable(
                        context.reference.chemistry(), r.voltage().high(), context.drive.temperatureC()))
                .map(r -> RestVoltage.charge(
                        context.reference.chemistry(),
                        r.voltage().value(),
                        context.drive.temperatureC(),
                        r.voltage().standardError(),
                        0));
        rested.ifPresent(soc -> context.add("charge-after-drive", soc));
        Optional<Interval> counted = context.socStart.flatMap(start -> net.map(moved -> counted(start, moved)));
        Optional<Interval> end = rested.isPresent() && counted.isPresent()
                ? Optional.of(both(rested.get(), counted.get()))
                : rested.or(() -> counted);
        end.ifPresent(soc -> context.estimates.put("socEndPct", soc));
    }

    private Optional<Interval> net() {
        double[] current = context.flow.current();
        if (current == null) {
            return Optional.empty();
        }
        double sum = 0;
        int n = 0;
        for (double i : current) {
            if (!Double.isNaN(i)) {
                sum += i;
                n++;
            }
        }
        if (n < current.length / 2) {
            return Optional.empty();
        }
        double hours = current.length * context.drive.grid().stepS() / 3600;
        return Optional.of(Interval.ofStandardError(sum / n * hours, context.flow.currentSe() * hours));
    }

    private Interval counted(Interval start, Interval net) {
        double moved = 100 * net.value() / context.reference.capacityAh();
        double unknown = context.reference.facts().battery().capacityAh() == null ? UNKNOWN_CAPACITY : AGED_CAPACITY;
        double reach = Math.hypot(
                100 * (net.high() - net.value()) / context.reference.capacityAh(), Interval.Z95 * unknown * moved);
        double end = clip(start.value() + moved);
        double low = clip(start.value() + moved - Math.hypot(start.value() - start.low(), reach));
        double high = clip(start.value() + moved + Math.hypot(start.high() - start.value(), reach));
        return new Interval(end, Math.min(low, end), Math.max(high, end));
    }

    /** Two values of one thing, weighed by their errors and wider where they disagree (Birge, 1932). */
    private static Interval both(Interval a, Interval b) {
        double wa = 1 / Math.max(1e-6, a.standardError() * a.standardError());
        double wb = 1 / Math.max(1e-6, b.standardError() * b.standardError());
        double value = clip((wa * a.value() + wb * b.value()) / (wa + wb));
        double apart = Math.abs(a.value() - b.value()) / Math.sqrt(1 / wa + 1 / wb);
        double least = Math.min(a.standardError(), b.standardError()); // both rest on one table of rest voltages
        double se = Math.max(least, Math.sqrt(1 / (wa + wb)) * Math.max(1, apart));
        return new Interval(value, Math.max(0, value - Interval.Z95 * se), Math.min(100, value + Interval.Z95 * se));
    }

    private static double clip(double percent) {
        return Math.max(0, Math.min(100, percent));
    }

    private void perUse(Interval net) {
        int starts = context.drive.starts().size();
        if (starts > 0) {
            context.add("charge-per-start", share(net, starts));
        }
        double[] speed = context.drive.speed();
        if (speed == null) {
            return;
        }
        double km = 0;
        for (double kmh : speed) {
            km += Double.isNaN(kmh) ? 0 : kmh * context.drive.grid().stepS() / 3600;
        }
        if (km >= SHORTEST_KM) {
            context.add("charge-per-100-km", share(net, km / 100));
        }
    }

    private static Interval share(Interval net, double of) {
        return new Interval(net.value() / of, net.low() / of, net.high() / of);
    }
}
