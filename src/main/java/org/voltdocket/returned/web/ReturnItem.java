package org.voltdocket.returned.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.voltdocket.returned.ArrivalWarning;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.ReturnListItem;

/** A line of the list of returned batteries, as JSON. */
@Schema(name = "ReturnedBatteryLine")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ReturnItem(
        UUID id,
        String number,
        String batterySerial,
        Instant arrivedAt,
        long daysHere,
        List<String> warnings,
        String pallet,
        @JsonProperty("case") @Schema(name = "case") String caseNumber,
        String place,
        String lot,
        String outcome) {

    static ReturnItem of(ReturnListItem line) {
        return new ReturnItem(
                line.id(),
                line.number(),
                line.serial().value(),
                line.arrivedAt(),
                line.days(),
                line.warnings().stream().map(ArrivalWarning::id).toList(),
                line.pallet().orElse(null),
                line.caseNumber().orElse(null),
                line.place().orElse(null),
                line.lot().orElse(null),
                line.outcome().map(BenchOutcome::id).orElse(null));
    }
}
