package org.voltdocket.dossier.list;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import io.swagger.v3.oas.annotations.media.Schema;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.voltdocket.casefile.AssessmentSummary;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.search.CasePage;

/** A page of the case list as JSON. */
@Schema(name = "CaseList")
record CaseListView(
        List<Row> cases,

        @Schema(nullable = true, description = "pass it as cursor to get the next page; null on the last page")
        String nextCursor) {

    /** A case in the list. The assessment members are absent until the first assessment. */
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
    record Row(
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

        static Row of(CaseListItem item) {
            AssessmentSummary summary = item.standing().orElse(null);
            boolean assessed = summary != null;
            return new Row(
                    item.ref().number().value(),
                    item.ref().serial().value(),
                    item.ref().vin().value(),
                    item.openedAt(),
                    assessed ? summary.verdict().id() : null,
                    assessed ? summary.leaning().id() : null,
                    assessed ? summary.firstCause().id() : null,
                    assessed ? BigDecimal.valueOf(summary.probability()) : null,
                    assessed ? summary.assessedAt() : null,
                    item.state());
        }
    }

    static CaseListView of(CasePage page) {
        return new CaseListView(
                page.cases().stream().map(Row::of).toList(), page.nextCursor().orElse(null));
    }
}
