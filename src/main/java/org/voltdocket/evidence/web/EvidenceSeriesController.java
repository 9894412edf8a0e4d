package org.voltdocket.evidence.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.evidence.Series;
import org.voltdocket.evidence.SeriesQuery;
import org.voltdocket.evidence.SeriesService;
import org.voltdocket.kernel.Actor;

/** Sections of recordings for drawing. */
@RestController
@Tag(name = "Evidence")
class EvidenceSeriesController {

    private final SeriesService series;

    EvidenceSeriesController(SeriesService series) {
        this.series = series;
    }

    /**
     * @param channels identifiers separated by commas; absent for all that were recorded
     * @param from s; absent for the first row
     * @param to s; absent for the last row
     * @param points about how many points per channel, 2 to 10 000; absent for 1000
     */
    @Operation(
            summary = "A section of a recording, reduced for drawing",
            description = "Every minimum and maximum remains at its time; null marks a gap.")
    @ApiResponse(responseCode = "200", description = "the lines, by channel")
    @ApiResponse(responseCode = "400", description = "a parameter is invalid; errors names it")
    @GetMapping({"/api/v1/evidence/{id}/series", "/evidence/{id}/series"})
    Series series(
            Actor actor,
            @PathVariable UUID id,
            @RequestParam(defaultValue = "") String channels,
            @RequestParam(required = false) String from,
            @RequestParam(required = false) String to,
            @RequestParam(required = false) String points) {
        List<String> names = Arrays.stream(channels.split(","))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
        Double count = number("points", points);
        if (count != null && count != Math.rint(count)) {
            throw SeriesQuery.invalid("points", "points must be a whole number; read '" + points + "'.");
        }
        SeriesQuery query =
                new SeriesQuery(names, number("from", from), number("to", to), count == null ? null : count.intValue());
        return series.read(actor, id, query);
    }

    private static Double number(String parameter, String text) {
        try {
            return text == null || text.isBlank() ? null : Double.valueOf(text.strip());
        } catch (NumberFormatException e) {
            throw SeriesQuery.invalid(parameter, parameter + " is not a number: '" + text + "'.");
        }
    }
}
