package org.voltdocket.assessment.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.UUID;
import org.voltdocket.assessment.AssessmentView.FindingView;
import org.voltdocket.assessment.AssessmentView.RegimeView;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.evidence.EvidenceItem;

/** An item of evidence: what was read from it, and what the latest assessment finds in it. */
@Schema(name = "EvidenceItem")
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonPropertyOrder({
    "id",
    "case",
    "kind",
    "sha256",
    "bytes",
    "fileName",
    "mediaType",
    "origin",
    "note",
    "receivedAt",
    "receivedBy",
    "takenAt",
    "rows",
    "durationS",
    "channels",
    "ignored",
    "findings",
    "regimes"
})
public record EvidenceView(
        UUID id,

        @com.fasterxml.jackson.annotation.JsonProperty("case")
        @Schema(name = "case", description = "number of its case", example = "V-0K3-9TF-R")
        String caseNumber,

        @Schema(
                allowableValues = {
                    "battery-test",
                    "cranking-test",
                    "charging-test",
                    "drive-recording",
                    "standing-recording",
                    "cranking-recording",
                    "discharge-recording",
                    "document"
                })
        String kind,

        @Schema(description = "digest of the original bytes, hexadecimal")
        String sha256,

        long bytes,
        String fileName,
        String mediaType,

        @Schema(allowableValues = {"workshop", "typed", "bench"})
        String origin,

        String note,
        Instant receivedAt,
        String receivedBy,

        @Schema(description = "clock time of the test or the first row, where the file says it")
        OffsetDateTime takenAt,

        @Schema(description = "rows of a recording") Integer rows,
        @Schema(description = "s, of a recording") Double durationS,

        @Schema(description = "columns of a recording with values")
        List<String> channels,

        @Schema(description = "columns or members that are not used")
        List<String> ignored,

        List<FindingView> findings,

        @Schema(description = "of a recording, covering it without gap")
        List<RegimeView> regimes) {

    public static EvidenceView of(
            String caseNumber,
            EvidenceItem item,
            List<Assessment.Finding> findings,
            List<Assessment.RegimeSpan> regimes) {
        boolean recording = item.isRecording();
        return new EvidenceView(
                item.id(),
                caseNumber,
                item.kind().id(),
                item.sha256().hex(),
                item.bytes(),
                item.fileName(),
                item.mediaType(),
                item.origin().id(),
                item.note(),
                item.receivedAt(),
                item.receivedBy(),
                item.takenAt(),
                item.rows(),
                item.durationS(),
                recording ? item.channels().stream().map(Channel::id).toList() : null,
                item.ignored(),
                findings.stream().map(FindingView::of).toList(),
                recording ? regimes.stream().map(RegimeView::of).toList() : null);
    }
}
