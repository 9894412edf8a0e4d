package org.voltdocket.worlds.fit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/**
 * Fits the weights of evidence on all worlds but one, in rotation, and on all of them.
 */
public final class WeightRotation {

    /** Of one square deciban, nats (ours). */
    private static final double PENALTY = 1;

    private final Rulebook expert;
    private final List<FitCase> cases;
    private final List<String> worlds;
    private final StringBuilder page = new StringBuilder();

    public WeightRotation(Rulebook expert, List<FitCase> cases) {
        this.expert = expert;
        this.cases = cases;
        this.worlds = cases.stream().map(FitCase::world).distinct().toList();
    }

    /** The fit on all worlds but one, by the world left out; all worlds under the name {@code none}. */
    public Map<String, WeightFit> fits() {
        Map<String, WeightFit> fits = new LinkedHashMap<>();
        for (String world : worlds) {
            fits.put(world, WeightFit.on(expert, where(one -> !one.world().equals(world)), PENALTY));
        }
        report(fits);
        fits.put("none", WeightFit.on(expert, cases, PENALTY));
        return fits;
    }

    /** Shares of right first causes before and after, as Markdown. */
    public String page() {
        return page.toString();
    }

    private void report(Map<String, WeightFit> fits) {
        line("| left out | channels | expert's weights right %% | fitted right %% | log loss before | after |");
        line("|---|---|---|---|---|---|");
        WeightFit before = WeightFit.none(expert);
        for (String world : worlds) {
            Map<String, List<FitCase>> sets = new TreeMap<>();
            where(one -> one.world().equals(world))
                    .forEach(one -> sets.computeIfAbsent(one.channels(), c -> new ArrayList<>())
                            .add(one));
            sets.forEach((set, some) -> line(
                    "| %s | %s | %.1f | %.1f | %.3f | %.3f |",
                    world,
                    set,
                    100 * right(before, some),
                    100 * right(fits.get(world), some),
                    loss(before, some),
                    loss(fits.get(world), some)));
        }
    }

    private List<FitCase> where(Predicate<FitCase> which) {
        return cases.stream().filter(which).toList();
    }

    private static double loss(WeightFit fit, List<FitCase> cases) {
        List<double[]> said = fit.probabilities(cases);
        double sum = 0;
        for (int i = 0; i < said.size(); i++) {
            sum -= StrictMath.log(
                    Math.max(1e-9, said.get(i)[cases.get(i).cause().ordinal()]));
        }
        return sum / cases.size();
    }

    private static double right(WeightFit fit, List<FitCase> cases) {
        List<double[]> said = fit.probabilities(cases);
        int right = 0;
        for (int i = 0; i < said.size(); i++) {
            int first = 0;
            for (Cause cause : Cause.values()) {
                first = said.get(i)[cause.ordinal()] > said.get(i)[first] ? cause.ordinal() : first;
            }
            right += first == cases.get(i).cause().ordinal() ? 1 : 0;
        }
        return (double) right / cases.size();
    }

    private void line(String format, Object... values) {
        page.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
