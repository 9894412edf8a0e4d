package org.voltdocket.returned.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.parameters.RequestBody;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.kernel.Actor;
import org.voltdocket.returned.ArrivalResult;
import org.voltdocket.returned.ReturnQuery;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.service.ReturnService;
import tools.jackson.databind.JsonNode;

/** Returned batteries from arrival to outcome. {@code dossier.web} adds their evidence, because its answer contains findings. */
@RestController
@RequestMapping(path = "/api/v1/returns", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Returns", description = "Returned batteries: arrival, bench tests, outcome (auditor, administrator).")
class ReturnsApiController {

    private static final int MOST = 500;

    private final ReturnService returns;
    private final Clock clock;

    ReturnsApiController(ReturnService returns, Clock clock) {
        this.returns = returns;
        this.clock = clock;
    }

    @Operation(
            operationId = "bookReturn",
            summary = "Register a returned battery and find its cases",
            description =
                    "'warnings' names what is odd about it. A battery that waits for its outcome is not booked in twice.")
    @ApiResponse(
            responseCode = "201",
            description = "booked in",
            content = @Content(schema = @Schema(implementation = ReturnView.class)))
    @ApiResponse(
            responseCode = "200",
            description = "it is already registered and has no outcome yet",
            content = @Content(schema = @Schema(implementation = ReturnView.class)))
    @RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ReturnRequestParser.Arrival.class)))
    @PostMapping
    ResponseEntity<ReturnView> arrive(Actor actor, @org.springframework.web.bind.annotation.RequestBody JsonNode body) {
        ArrivalResult arrived = returns.arrive(
                actor,
                ReturnRequestParser.serial(body),
                Optional.ofNullable(ReturnRequestParser.text(body, "pallet")).filter(text -> !text.isBlank()));
        ReturnView view = view(arrived.battery());
        return arrived.created()
                ? ResponseEntity.created(URI.create("/api/v1/returns/" + view.id()))
                        .body(view)
                : ResponseEntity.ok(view);
    }

    @Operation(operationId = "listReturns", summary = "Returned batteries, newest first")
    @GetMapping
    List<ReturnItem> list(
            Actor actor,
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "") String state,
            @RequestParam(defaultValue = "50") int limit) {
        return returns.list(actor, new ReturnQuery(q, state, "", Math.min(limit, MOST))).stream()
                .map(ReturnItem::of)
                .toList();
    }

    @Operation(operationId = "readReturn", summary = "A returned battery with all its records")
    @GetMapping("/{returned}")
    ReturnView read(Actor actor, @PathVariable UUID returned) {
        return view(returns.of(actor, returned));
    }

    @Operation(operationId = "lookAtReturn", summary = "Record its condition before anything is connected to it")
    @RequestBody(required = true, content = @Content(schema = @Schema(implementation = ReturnRequestParser.Look.class)))
    @PostMapping("/{returned}/condition")
    ReturnView look(
            Actor actor,
            @PathVariable UUID returned,
            @org.springframework.web.bind.annotation.RequestBody JsonNode body) {
        return view(returns.recordCondition(actor, returned, ReturnRequestParser.look(body)));
    }

    @Operation(
            operationId = "noteBenchStep",
            summary = "Record a bench step",
            description = "A step that takes time is started and finished, any other is finished only.")
    @ApiResponse(responseCode = "409", description = "the procedure does not allow it now; the answer says when or why")
    @ApiResponse(
            responseCode = "200",
            description = "the battery as it is now",
            content = @Content(schema = @Schema(implementation = ReturnView.class)))
    @RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ReturnRequestParser.BenchStepRequest.class)))
    @PostMapping("/{returned}/steps")
    ReturnView step(
            Actor actor,
            @PathVariable UUID returned,
            @org.springframework.web.bind.annotation.RequestBody JsonNode body) {
        return view(returns.recordStep(
                actor,
                returned,
                ReturnRequestParser.step(ReturnRequestParser.text(body, "step")),
                ReturnRequestParser.act(ReturnRequestParser.text(body, "act")),
                ReturnRequestParser.at(ReturnRequestParser.text(body, "at")),
                ReturnRequestParser.text(body, "note")));
    }

    @Operation(
            operationId = "concludeReturn",
            summary = "Give the outcome",
            description = "Given again, the later one counts and the earlier one stays.")
    @RequestBody(
            required = true,
            content = @Content(schema = @Schema(implementation = ReturnRequestParser.Conclusion.class)))
    @PostMapping("/{returned}/outcome")
    ReturnView conclude(
            Actor actor,
            @PathVariable UUID returned,
            @org.springframework.web.bind.annotation.RequestBody JsonNode body) {
        return view(returns.recordOutcome(
                actor,
                returned,
                ReturnRequestParser.finding(ReturnRequestParser.text(body, "outcome")),
                ReturnRequestParser.text(body, "reason")));
    }

    private ReturnView view(ReturnedBattery battery) {
        return ReturnView.of(battery, clock.instant());
    }
}
