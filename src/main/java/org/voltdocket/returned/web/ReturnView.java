package org.voltdocket.returned.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.returned.ArrivalWarning;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchStepRules;
import org.voltdocket.returned.RecordedOutcome;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.bench.ChecklistItem;

/** A returned battery as JSON. */
@Schema(name = "ReturnedBattery")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ReturnView(
        UUID id,

        @Schema(description = "as on its label", example = "R-000017")
        String number,

        String batterySerial,

        @Schema(description = "number of the pallet it arrived on")
        String pallet,

        Instant arrivedAt,
        String bookedBy,

        @Schema(description = "whole days since it arrived") long daysHere,

        @Schema(description = "no-case, several-cases, never-sold, not-on-list, here-before")
        List<String> warnings,

        @JsonProperty("case") @Schema(name = "case", description = "number of the case that its evidence is added to")
        String caseNumber,

        @Schema(description = "numbers of all cases of the battery, newest first")
        List<String> cases,

        ConditionView condition,

        @Schema(description = "where it stands in the store")
        String place,

        @Schema(description = "bench procedure: what is done, and what may be done when")
        List<StepView> procedure,

        @Schema(description = "ids of the bench evidence") List<UUID> evidence,

        OutcomeView outcome,

        @Schema(description = "outcomes that a later one corrected, oldest first")
        List<OutcomeView> earlierOutcomes) {

    /** How it looked. */
    @Schema(name = "ReturnedCondition")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record ConditionView(
            boolean cracked,
            boolean leaking,
            boolean swollen,
            boolean frozen,

            @Schema(allowableValues = {"sound", "corroded", "damaged"})
            String terminals,

            String note,
            Instant seenAt,
            String seenBy) {}

    /** A step of the bench. */
    @Schema(name = "BenchStep")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record StepView(
            String step,

            @Schema(allowableValues = {"done", "running", "ready", "waiting", "blocked"})
            String state,

            Instant startedAt,
            String startedBy,
            Instant doneAt,
            String doneBy,

            @Schema(description = "when it may begin or end")
            Instant notBefore) {

        static StepView of(ChecklistItem line) {
            return new StepView(
                    line.stage().step().id(),
                    line.state().id(),
                    line.startedAt(),
                    line.startedBy(),
                    line.doneAt(),
                    line.doneBy(),
                    line.from());
        }
    }

    /** What the bench concluded. */
    @Schema(name = "ReturnedOutcome")
    public record OutcomeView(
            @Schema(
                    allowableValues = {
                        "defect-confirmed",
                        "wear-confirmed",
                        "no-fault-found",
                        "damaged-by-use",
                        "not-tested"
                    })
            String outcome,

            String reason,
            Instant givenAt,
            String givenBy) {

        static OutcomeView of(RecordedOutcome outcome) {
            return new OutcomeView(outcome.finding().id(), outcome.reason(), outcome.givenAt(), outcome.givenBy());
        }
    }

    /** @param now for the procedure */
    public static ReturnView of(ReturnedBattery battery, Instant now) {
        List<OutcomeView> outcomes =
                battery.outcomes().stream().map(OutcomeView::of).toList();
        return new ReturnView(
                battery.id(),
                battery.number(),
                battery.serial().value(),
                battery.pallet().orElse(null),
                battery.arrivedAt(),
                battery.bookedBy(),
                battery.days(),
                battery.warnings().stream().map(ArrivalWarning::id).toList(),
                battery.file().map(CaseReference::number).map(Object::toString).orElse(null),
                battery.cases().stream()
                        .map(line -> line.ref().number().value())
                        .toList(),
                battery.condition().map(ReturnView::condition).orElse(null),
                battery.place().map(ReturnedBattery.Place::name).orElse(null),
                BenchStepRules.checklist(battery, now).stream()
                        .map(StepView::of)
                        .toList(),
                battery.evidence().stream().map(item -> item.id()).toList(),
                outcomes.isEmpty() ? null : outcomes.get(outcomes.size() - 1),
                outcomes.size() < 2 ? null : outcomes.subList(0, outcomes.size() - 1));
    }

    private static ConditionView condition(BatteryCondition seen) {
        return new ConditionView(
                seen.cracked(),
                seen.leaking(),
                seen.swollen(),
                seen.frozen(),
                seen.terminals().id(),
                seen.note(),
                seen.seenAt(),
                seen.seenBy());
    }
}
