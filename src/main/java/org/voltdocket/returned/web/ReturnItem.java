package org.voltdocket.returned.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.voltdocket.returned.Finding;
import org.voltdocket.returned.ReturnLine;
import org.voltdocket.returned.Told;

/** A line of the list of returned batteries, as JSON. */
@Schema(name = "ReturnedBatteryLine")
@JsonInclude(JsonInclude.Include.NON_NULL)
record ReturnItem(
        UUID id,
        String number,
        String batterySerial,
        Instant arrivedAt,
        long daysHere,
        List<String> told,
        String pallet,
        @JsonProperty("case") @Schema(name = "case") String caseNumber,
        String place,
        String lot,
        String outcome) {

    static ReturnItem of(ReturnLine line) {
        return new ReturnItem(
                line.id(),
                line.number(),
                line.serial().value(),
                line.arrivedAt(),
                line.days(),
                line.told().stream().map(Told::id).toList(),
                line.pallet().orElse(null),
                line.caseNumber().orElse(null),
                line.place().orElse(null),
                line.lot().orElse(null),
                line.outcome().map(Finding::id).orElse(null));
    }
}
