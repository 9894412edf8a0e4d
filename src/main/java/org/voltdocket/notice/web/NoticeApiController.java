package org.voltdocket.notice.web;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.notice.Notice;
import org.voltdocket.notice.NoticeService;
import org.voltdocket.ui.TextFormatter;

/** Notices by script. */
@RestController
@RequestMapping(path = "/api/v1", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Notices", description = "What a person should look at; never for workshops, never a refusal.")
class NoticeApiController {

    private static final int MOST = 200;

    private final NoticeService notices;
    private final CaseService cases;
    private final TextFormatter words;

    NoticeApiController(NoticeService notices, CaseService cases, TextFormatter words) {
        this.notices = notices;
        this.cases = cases;
        this.words = words;
    }

    /** A notice. */
    @Schema(name = "Notice")
    record View(
            UUID id,

            @JsonProperty("case") @Schema(description = "absent where it is about a workshop")
            String number,

            String workshop,
            String kind,

            @Schema(description = "its grounds in a sentence")
            String said,

            @Schema(description = "other cases that it speaks of")
            List<String> others,

            Instant foundAt,
            Instant lookedAt,
            String lookedBy,
            String lookedReason,

            @Schema(description = "when its grounds were gone")
            Instant goneAt) {}

    /** What came of looking at it. */
    @Schema(name = "LookedAt")
    record Looked(String reason) {}

    @Operation(operationId = "listNotices", summary = "The newest notices that wait for a person, at most 200")
    @GetMapping("/notices")
    List<View> open(Actor actor) {
        return notices.open(actor, Optional.empty(), MOST).stream()
                .map(this::view)
                .toList();
    }

    @Operation(operationId = "noticesOfCase", summary = "Every notice of a case and its workshop")
    @GetMapping("/cases/{number}/notices")
    List<View> ofCase(Actor actor, @PathVariable CaseNumber number) {
        if (actor.isWorkshop()) {
            throw new AccessDeniedException("notices are for the distributor");
        }
        return notices.ofCase(actor, cases.require(actor, number).id()).stream()
                .map(this::view)
                .toList();
    }

    @Operation(operationId = "lookAtNotice", summary = "Record the review of a notice and its result")
    @ApiResponse(responseCode = "200", description = "the notice as it is now")
    @ApiResponse(responseCode = "409", description = "it was already reviewed")
    @PostMapping("/notices/{id}")
    View lookedAt(Actor actor, @PathVariable UUID id, @RequestBody Looked looked) {
        return view(notices.lookedAt(actor, id, looked.reason()));
    }

    private View view(Notice notice) {
        return new View(
                notice.id(),
                notice.number().map(CaseNumber::value).orElse(null),
                notice.workshop().orElse(null),
                notice.kind().id(),
                words.say("notice.said." + notice.kind().id(), notice.grounds().toArray()),
                notice.others().stream().map(CaseNumber::value).toList(),
                notice.foundAt(),
                notice.looked().map(Notice.Looked::at).orElse(null),
                notice.looked().map(Notice.Looked::by).orElse(null),
                notice.looked().map(Notice.Looked::reason).orElse(null),
                notice.goneAt().orElse(null));
    }
}
