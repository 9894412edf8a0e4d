package org.voltdocket.returned.web;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchComparison;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.BenchStepRules;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.trail.Trail;
import org.voltdocket.trail.TrailEntry;

/** Fills the model of a returned battery's page. */
@Component
class ReturnPageModel {

    private final BenchComparison results;
    private final ReturnLabelFactory labels;
    private final Trail trail;
    private final Clock clock;

    ReturnPageModel(BenchComparison results, ReturnLabelFactory labels, Trail trail, Clock clock) {
        this.results = results;
        this.labels = labels;
        this.trail = trail;
        this.clock = clock;
    }

    void fill(ReturnedBattery battery, Model model) {
        Instant now = clock.instant();
        model.addAttribute("r", battery);
        model.addAttribute("checklist", BenchStepRules.checklist(battery, now));
        model.addAttribute("dangerous", BenchStepRules.dangerous(battery));
        model.addAttribute("results", results.of(battery));
        model.addAttribute(
                "photos",
                battery.evidence().stream()
                        .filter(item -> item.kind() == EvidenceKind.DOCUMENT
                                && item.mediaType().startsWith("image/"))
                        .toList());
        model.addAttribute("findings", BenchOutcome.values());
        model.addAttribute("terminals", BatteryCondition.Terminals.values());
        model.addAttribute("size", labels.usual());
        model.addAttribute("trail", trail(battery));
    }

    /** Entries are in the trail of its case, or under the number of the return before it had a case. */
    private List<TrailEntry> trail(ReturnedBattery battery) {
        List<TrailEntry> all = new ArrayList<>(trail.of(battery.number()));
        battery.file()
                .ifPresent(ref -> trail.of(ref.number().value()).stream()
                        .filter(entry -> battery.number().equals(entry.details().get("return.number")))
                        .forEach(all::add));
        all.sort(Comparator.comparing(TrailEntry::at));
        return all;
    }
}
