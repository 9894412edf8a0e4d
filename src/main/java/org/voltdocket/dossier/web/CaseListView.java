package org.voltdocket.dossier.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.voltdocket.casefile.AssessmentSummary;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CasePage;

/** A page of a list in JSON. */
@Schema(name = "CaseList")
record CaseListView(
        List<Line> cases,

        @Schema(nullable = true, description = "give it back as cursor for the next page; null on the last")
        String nextCursor) {

    /** A case as a list tells it; what is not assessed yet is absent. */
    @Schema(name = "CaseLine")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    @JsonPropertyOrder({
        "number",
        "batterySerial",
        "vin",
        "openedAt",
        "batteryVerdict",
        "leaning",
        "firstCause",
        "probability",
        "assessedAt",
        "state"
    })
    record Line(
            String number,
            String batterySerial,
            String vin,
            Instant openedAt,
            String batteryVerdict,
            String leaning,
            String firstCause,
            BigDecimal probability,
            Instant assessedAt,

            @Schema(description = "state of its claim; none where there is no claim")
            String state) {

        static Line of(CaseListItem line) {
            AssessmentSummary standing = line.standing().orElse(null);
            boolean assessed = standing != null;
            return new Line(
                    line.ref().number().value(),
                    line.ref().serial().value(),
                    line.ref().vin().value(),
                    line.openedAt(),
                    assessed ? standing.verdict().id() : null,
                    assessed ? standing.leaning().id() : null,
                    assessed ? standing.firstCause().id() : null,
                    assessed ? BigDecimal.valueOf(standing.probability()) : null,
                    assessed ? standing.assessedAt() : null,
                    line.state());
        }
    }

    static CaseListView of(CasePage page) {
        return new CaseListView(
                page.cases().stream().map(Line::of).toList(), page.nextCursor().orElse(null));
    }
}
