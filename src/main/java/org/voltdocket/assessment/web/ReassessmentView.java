package org.voltdocket.assessment.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.voltdocket.assessment.rerun.CaseChange;
import org.voltdocket.assessment.rerun.FailedCase;
import org.voltdocket.assessment.rerun.ReassessmentRun;
import org.voltdocket.assessment.rerun.RunProgress;

/** A run in JSON. What is not known is absent. */
@Schema(name = "Reassessment")
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonPropertyOrder({
    "id",
    "mode",
    "rulebook",
    "rulebookSha256",
    "state",
    "requestedAt",
    "requestedBy",
    "startedAt",
    "endedAt",
    "reason",
    "casesTotal",
    "casesRead",
    "casesPerSecond",
    "secondsLeft",
    "changedTotal",
    "changed",
    "failedTotal",
    "failed"
})
record ReassessmentView(
        UUID id,
        @Schema(allowableValues = {"trial", "final"}) String mode,

        @Schema(description = "edition of the rule book") String rulebook,

        @Schema(description = "digest of the edition's text")
        String rulebookSha256,

        @Schema(allowableValues = {"queued", "running", "paused", "done", "stopped", "failed"})
        String state,

        Instant requestedAt,
        String requestedBy,
        Instant startedAt,
        Instant endedAt,

        @Schema(description = "why it failed") String reason,

        @Schema(description = "cases that existed when it started; 0 until then")
        int casesTotal,

        int casesRead,

        @Schema(description = "over the last minute while it runs, over the whole time afterwards")
        double casesPerSecond,

        @Schema(description = "absent while no rate is known")
        Double secondsLeft,

        int changedTotal,
        List<Changed> changed,

        @Schema(description = "cases that could not be assessed")
        int failedTotal,

        List<FailedCase> failed) {

    /** A case whose leaning or first cause changes. */
    @Schema(name = "ChangedCase")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({"case", "leaningBefore", "leaningAfter", "causeBefore", "causeAfter", "findings"})
    record Changed(
            @com.fasterxml.jackson.annotation.JsonProperty("case")
            @Schema(name = "case", description = "number of the case")
            String number,

            @Schema(description = "absent where it was not assessed before")
            String leaningBefore,

            String leaningAfter,
            String causeBefore,
            String causeAfter,

            @Schema(description = "ids of the findings that differ")
            List<String> findings) {

        static Changed of(CaseChange change) {
            return new Changed(
                    change.number(),
                    change.leaningBefore(),
                    change.leaningAfter(),
                    change.causeBefore(),
                    change.causeAfter(),
                    change.findings());
        }
    }

    static ReassessmentView of(
            ReassessmentRun run, RunProgress progress, List<CaseChange> changes, List<FailedCase> failures) {
        return new ReassessmentView(
                run.id(),
                run.mode().id(),
                run.edition(),
                run.sha256().hex(),
                run.state().id(),
                run.requestedAt(),
                run.requestedBy(),
                run.startedAt().orElse(null),
                run.endedAt().orElse(null),
                run.reason().orElse(null),
                run.casesTotal(),
                progress.casesRead(),
                Math.round(progress.casesPerSecond() * 10) / 10.0,
                progress.secondsLeft().map(s -> Math.round(s * 10) / 10.0).orElse(null),
                progress.casesChanged(),
                changes.stream().map(Changed::of).toList(),
                progress.casesFailed(),
                failures);
    }
}
