package org.voltdocket.dossier.list;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.search.CaseQuery;
import org.voltdocket.casefile.search.CaseSearch;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The list of cases as JSON. */
@RestController
@Tag(name = "Cases")
class CaseListApiController {

    private final CaseSearch search;

    CaseListApiController(CaseSearch search) {
        this.search = search;
    }

    @Operation(operationId = "listCases", summary = "List cases, newest first")
    @GetMapping(path = "/api/v1/cases", produces = MediaType.APPLICATION_JSON_VALUE)
    CaseListView list(
            Actor actor,
            @Parameter(description = "serial (whole or part), VIN (whole, its last 6 or 8) or case number")
                    @RequestParam(defaultValue = "")
                    String q,
            @RequestParam Optional<String> leaning,
            @Parameter(description = "first cause") @RequestParam Optional<String> cause,
            @Parameter(description = "state of the claim; none for cases without one") @RequestParam
                    Optional<String> state,
            @Parameter(description = "1 to 200") @RequestParam(defaultValue = "50") int limit,
            @Parameter(description = "nextCursor of the page before") @RequestParam Optional<String> cursor) {
        try {
            return CaseListView.of(search.page(
                    actor,
                    new CaseQuery(
                            q,
                            text(leaning).map(id -> filter("leaning", Leaning::of, id)),
                            text(cause).map(id -> filter("cause", Cause::of, id)),
                            text(state)
                                    .map(id -> id.equals(CaseListItem.NO_CLAIM)
                                            ? id
                                            : filter("state", ClaimState::of, id)
                                                    .id()),
                            limit,
                            text(cursor))));
        } catch (IllegalArgumentException e) {
            throw RequestException.malformed(e.getMessage());
        }
    }

    private static Optional<String> text(Optional<String> parameter) {
        return parameter.map(String::strip).filter(text -> !text.isEmpty());
    }

    private static <E> E filter(String name, Function<String, E> of, String id) {
        try {
            return of.apply(id);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("'" + name + "': " + e.getMessage(), e);
        }
    }
}
