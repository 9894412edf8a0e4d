package org.voltdocket.evidence.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.ExceptionHandler;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.InvalidSeriesQueryException;
import org.voltdocket.evidence.Series;
import org.voltdocket.evidence.SeriesQuery;
import org.voltdocket.kernel.Actor;
import org.voltdocket.ui.ProblemDetails;

/** Recordings, thinned for drawing. */
@RestController
@Tag(name = "Evidence")
class EvidenceSeriesController {

    private final EvidenceArchive archive;

    EvidenceSeriesController(EvidenceArchive archive) {
        this.archive = archive;
    }

    /**
     * @param channels identifiers with commas between; absent for all that were recorded
     * @param from s; absent for the first row
     * @param to s; absent for the last row
     * @param points about how many points per channel, 2 to 10 000; absent for 1000
     */
    @Operation(
            summary = "A stretch of a recording, thinned for drawing",
            description = "Every minimum and maximum survives at its true time; a null breaks the line at a gap.")
    @ApiResponse(responseCode = "200", description = "the lines, by channel")
    @ApiResponse(responseCode = "400", description = "a parameter cannot be right; it is named")
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
            throw refused("points", "points is to be a whole number; read '" + points + "'.");
        }
        SeriesQuery query =
                new SeriesQuery(names, number("from", from), number("to", to), count == null ? null : count.intValue());
        return archive.series(actor, id, query);
    }

    @ExceptionHandler
    ResponseEntity<ProblemDetail> refused(InvalidSeriesQueryException refused) {
        return ProblemDetails.answer(problem(refused.parameter(), refused.getMessage()));
    }

    private static Double number(String parameter, String text) {
        try {
            return text == null || text.isBlank() ? null : Double.valueOf(text.strip());
        } catch (NumberFormatException e) {
            throw refused(parameter, parameter + " is no number: '" + text + "'.");
        }
    }

    private static RuntimeException refused(String parameter, String message) {
        return ProblemDetails.raise(problem(parameter, message));
    }

    private static ProblemDetail problem(String parameter, String message) {
        ProblemDetail problem = ProblemDetails.of(HttpStatus.BAD_REQUEST, "series-refused", "No such series", message);
        problem.setProperty("errors", List.of(Map.of("parameter", parameter, "message", message)));
        return problem;
    }
}
