package org.voltdocket.worlds;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.worlds.WorldEvaluation.Outcome;
import org.voltdocket.worlds.WorldTally.Count;

/** Writes what an evaluation counted as Markdown. */
final class WorldReport {

    private final StringBuilder page = new StringBuilder();
    private final List<String> cells = new ArrayList<>();
    private String section;

    /** Counts {@code outcomes} that were assessed by an edition. */
    WorldReport(List<Outcome> outcomes, String edition) {
        line("Rule book %s. Numbers are cases of cases, with the share in percent.", edition);
        summary(outcomes);
        bySeverity(outcomes);
        byFault(outcomes);
        calibration(outcomes);
        coverage(outcomes);
    }

    /** The counts as tables in Markdown. */
    String page() {
        return page.toString();
    }

    /** The same counts, one a line: section, quantity, world, channels, cases, of cases. */
    List<String> cells() {
        return cells;
    }

    private void summary(List<Outcome> outcomes) {
        Map<String, WorldTally> groups = groups(outcomes, o -> o.truth().world() + " · " + o.channels().id);
        Map<String, Function<WorldTally, Count>> rows = new LinkedHashMap<>();
        rows.put("first cause right", WorldTally::firstCause);
        rows.put("first cause right, observable cases", WorldTally::firstCauseObservable);
        rows.put("observable", WorldTally::observable);
        rows.put("differs from its twins, but not found by weights of the same world", WorldTally::notFound);
        rows.put("fault left no trace", t -> t.kind(Distinguishability.Kind.UNSEEN));
        rows.put("fault looks like one of another cause", t -> t.kind(Distinguishability.Kind.LIKE_ANOTHER));
        rows.put("stated above 95 %: right", WorldTally::firmStatements);
        rows.put("healthy, leaning to battery or vehicle", WorldTally::healthyBlamed);
        rows.put("battery judged", WorldTally::judged);
        rows.put("battery verdict right, of judged", WorldTally::verdictRight);
        rows.put("battery faults leaning to the battery", WorldTally::batteryFaultsBatterySide);
        rows.put("the same, tested and rated", WorldTally::testedBatteryFaultsBatterySide);
        rows.put("failed battery called sound", WorldTally::failedCalledSound);
        rows.put("good battery called failed", WorldTally::goodCalledFailed);
        rows.put("failed battery leaning to the vehicle", WorldTally::failedVehicleSide);
        rows.put("unjudged battery leaning to the vehicle", WorldTally::unjudgedVehicleSide);
        rows.put("vehicle faults leaning to the vehicle", WorldTally::vehicleFaultsVehicleSide);
        rows.put("leaning right, of those not open", WorldTally::leaningsRight);
        rows.put("leaning turned or opened by the facts that were missing", WorldTally::turned);
        rows.put("leaning open", WorldTally::open);
        heading("Summary", "quantity", groups);
        rows.forEach((name, count) -> row(name, groups, count));
    }

    private void bySeverity(List<Outcome> outcomes) {
        Map<String, WorldTally> groups = groups(outcomes, o -> o.truth().world() + " · " + o.channels().id);
        heading("First cause right by severity, observable cases with a fault", "severity", groups);
        for (Severity severity : Severity.values()) {
            List<Outcome> some = outcomes.stream()
                    .filter(o -> o.truth().fault().cause() != Cause.NONE)
                    .filter(o -> o.truth().severity() == severity)
                    .toList();
            row(
                    severity.name().toLowerCase(Locale.ROOT),
                    groups(some, o -> o.truth().world() + " · " + o.channels().id),
                    WorldTally::firstCauseObservable);
        }
    }

    private void byFault(List<Outcome> outcomes) {
        Map<String, WorldTally> groups = groups(outcomes, o -> o.truth().world() + " · " + o.channels().id);
        heading("First cause right by fault, and what is said instead", "fault", groups, "said instead");
        for (Fault fault : Fault.values()) {
            List<Outcome> some =
                    outcomes.stream().filter(o -> o.truth().fault() == fault).toList();
            if (!some.isEmpty()) {
                Map<String, WorldTally> mine = groups(some, o -> o.truth().world() + " · " + o.channels().id);
                row(fault.id(), mine, WorldTally::firstCause, instead(some));
            }
        }
    }

    private static String instead(List<Outcome> outcomes) {
        Map<String, Long> causes = outcomes.stream()
                .filter(o -> !o.right())
                .collect(Collectors.groupingBy(o -> o.said().first().id(), TreeMap::new, Collectors.counting()));
        return causes.entrySet().stream()
                .sorted((a, b) -> Long.compare(b.getValue(), a.getValue()))
                .map(e -> e.getKey() + " " + e.getValue())
                .collect(Collectors.joining(", "));
    }

    private void calibration(List<Outcome> outcomes) {
        section = "Calibration of the first cause";
        line("");
        line("## Calibration of the first cause");
        line("");
        line("| channels | tenth | cases | mean stated %% | right %% |");
        line("|---|---|---|---|---|");
        groups(outcomes, o -> o.channels().id)
                .forEach((name, tally) -> tally.calibration().forEach((tenth, sums) -> {
                    double stated = 100 * sums[1] / sums[0];
                    line(
                            "| %s | %d to %d %% | %.0f | %.1f | %.1f |",
                            name, 10 * tenth, 10 * tenth + 10, sums[0], stated, 100 * sums[2] / sums[0]);
                    String quantity = String.format(
                            Locale.ROOT, "stated %d to %d %%, mean %.1f %%", 10 * tenth, 10 * tenth + 10, stated);
                    cell(quantity, "all · " + name, new Count((long) sums[2], (long) sums[0]));
                }));
    }

    private void coverage(List<Outcome> outcomes) {
        Map<String, WorldTally> groups = groups(outcomes, o -> o.truth().world() + " · " + o.channels().id);
        heading("Intervals of 95 % that hold the true value", "estimate", groups);
        List<String> names = groups.values().stream()
                .flatMap(t -> t.coverage().keySet().stream())
                .distinct()
                .sorted()
                .toList();
        for (String name : names) {
            row(name, groups, t -> t.coverage().getOrDefault(name, new Count(0, 0)));
        }
    }

    private static Map<String, WorldTally> groups(List<Outcome> outcomes, Function<Outcome, String> by) {
        Map<String, WorldTally> groups = new LinkedHashMap<>();
        outcomes.stream()
                .collect(Collectors.groupingBy(by, LinkedHashMap::new, Collectors.toList()))
                .forEach((name, some) -> groups.put(name, new WorldTally(some)));
        return groups;
    }

    private void heading(String title, String first, Map<String, WorldTally> groups, String... more) {
        section = title;
        line("");
        line("## %s", title);
        line("");
        List<String> names = new ArrayList<>(List.of(first));
        names.addAll(groups.keySet());
        names.addAll(List.of(more));
        line("| %s |", String.join(" | ", names));
        line("|%s", "---|".repeat(names.size()));
    }

    private void row(String name, Map<String, WorldTally> groups, Function<WorldTally, Count> count, String... more) {
        List<String> line = new ArrayList<>(List.of(name));
        groups.forEach((group, tally) -> {
            line.add(cell(count.apply(tally)));
            cell(name, group, count.apply(tally));
        });
        line.addAll(List.of(more));
        line("| %s |", String.join(" | ", line));
    }

    private void cell(String quantity, String group, Count count) {
        String[] of = group.split(" · ");
        cells.add(String.join(";", section, quantity, of[0], of[1], "" + count.part(), "" + count.whole()));
    }

    private static String cell(Count count) {
        return count.whole() == 0
                ? "–"
                : String.format(Locale.ROOT, "%d/%d (%.1f)", count.part(), count.whole(), 100 * count.share());
    }

    private void line(String format, Object... values) {
        page.append(String.format(Locale.ROOT, format, values)).append('\n');
    }
}
