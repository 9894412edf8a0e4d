package org.voltdocket.recovery.web;

import com.fasterxml.jackson.annotation.JsonProperty;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Money;
import org.voltdocket.recovery.RecoveryService;
import org.voltdocket.recovery.SupplierAnswer;
import org.voltdocket.recovery.SupplierBalance;
import org.voltdocket.recovery.SupplierRecovery;

/** Lists for suppliers by script. */
@RestController
@RequestMapping(path = "/api/v1/recoveries", produces = MediaType.APPLICATION_JSON_VALUE)
@Tag(name = "Recoveries", description = "What is asked back from suppliers for approved claims, and what came back.")
class RecoveryApiController {

    private final RecoveryService recoveries;

    RecoveryApiController(RecoveryService recoveries) {
        this.recoveries = recoveries;
    }

    /** How things stand with one supplier in one currency. */
    @Schema(name = "OpenMoney")
    record MoneyView(
            String supplier,
            String name,
            String currency,
            int waitingClaims,

            @Schema(description = "approved and in no list yet")
            String waiting,

            int sentClaims,

            @Schema(description = "in a live list and not answered")
            String sent,

            String credited,

            @Schema(description = "refused, and what credits fall short")
            String refused) {

        static MoneyView of(SupplierBalance one) {
            return new MoneyView(
                    one.supplier(),
                    one.name(),
                    one.currency(),
                    one.waitingClaims(),
                    one.waiting().text(),
                    one.sentClaims(),
                    one.sent().text(),
                    one.credited().text(),
                    one.refused().text());
        }
    }

    /** Open money and the lists. */
    @Schema(name = "Recoveries")
    record Overview(List<MoneyView> money, List<ListView> lists) {}

    /** A list. */
    @Schema(name = "RecoveryList")
    record ListView(
            String number,
            String supplier,
            String currency,
            String total,
            String open,
            String credited,
            Instant madeAt,
            String madeBy,
            String pdfSha256,
            String csvSha256,

            @Schema(description = "absent unless it is withdrawn")
            Instant withdrawnAt,

            List<LineView> claims) {

        static ListView of(SupplierRecovery list) {
            return new ListView(
                    list.number(),
                    list.supplier(),
                    list.total().code(),
                    list.total().text(),
                    list.open().text(),
                    list.credited().text(),
                    list.madeAt(),
                    list.madeBy(),
                    list.pdf().hex(),
                    list.csv().hex(),
                    list.withdrawn().map(SupplierRecovery.Withdrawn::at).orElse(null),
                    list.lines().stream().map(LineView::of).toList());
        }
    }

    /** A claim of a list. */
    @Schema(name = "RecoveryClaim")
    record LineView(
            int position,
            UUID claim,
            @JsonProperty("case") String number,
            String batterySerial,
            String type,
            String batch,
            LocalDate approvedOn,
            String amount,

            @Schema(description = "oldest first; the last one counts")
            List<AnswerView> answers) {

        static LineView of(SupplierRecovery.Line line) {
            return new LineView(
                    line.position(),
                    line.claim(),
                    line.number().value(),
                    line.serial().value(),
                    line.type(),
                    line.batch(),
                    line.decidedOn(),
                    line.amount().text(),
                    line.answers().stream().map(AnswerView::of).toList());
        }
    }

    /** What came back. */
    @Schema(name = "RecoveryAnswer")
    record AnswerView(
            @Schema(allowableValues = {"credited", "refused"})
            String outcome,

            String amount,
            LocalDate on,
            String reason,
            Instant recordedAt,
            String recordedBy) {

        static AnswerView of(SupplierRecovery.Answer answer) {
            return new AnswerView(
                    answer.credited().isPresent() ? "credited" : "refused",
                    answer.credited().map(Money::text).orElse(null),
                    answer.on(),
                    answer.reason().orElse(null),
                    answer.recordedAt(),
                    answer.recordedBy());
        }
    }

    /** What to put into a list. */
    @Schema(name = "RecoveryRequest")
    record Wanted(
            String supplier,
            String currency,

            @Schema(description = "ids of claims; absent for all that wait")
            Set<UUID> claims) {}

    /** Why a list is taken back. */
    @Schema(name = "RecoveryWithdrawal")
    record Reason(String reason) {}

    @Operation(operationId = "listRecoveries", summary = "Open amounts by supplier, and the newest lists")
    @GetMapping
    Overview overview(Actor actor) {
        return new Overview(
                recoveries.money(actor).stream().map(MoneyView::of).toList(),
                recoveries.all(actor).stream().map(ListView::of).toList());
    }

    @Operation(operationId = "makeRecovery", summary = "Make a list for a supplier (clerk, administrator)")
    @ApiResponse(responseCode = "201", description = "made and frozen")
    @ApiResponse(responseCode = "409", description = "nothing waits, or a claim named does not")
    @PostMapping
    ResponseEntity<ListView> make(Actor actor, @RequestBody Wanted wanted) {
        Set<UUID> claims = wanted.claims() == null ? Set.of() : wanted.claims();
        SupplierRecovery made = recoveries.make(actor, wanted.supplier(), wanted.currency(), claims);
        return ResponseEntity.status(HttpStatus.CREATED).body(ListView.of(made));
    }

    @Operation(operationId = "readRecovery", summary = "A list with its answers")
    @GetMapping("/{list}")
    ListView one(Actor actor, @PathVariable String list) {
        return ListView.of(recoveries.of(actor, list));
    }

    @Operation(
            operationId = "answerRecovery",
            summary = "Enter the supplier's answer for one claim (clerk, administrator)",
            description = "Another answer to the same claim corrects the earlier one, which is kept.")
    @PostMapping("/{list}/answers")
    ListView answer(Actor actor, @PathVariable String list, @RequestBody SupplierAnswer given) {
        return ListView.of(recoveries.answer(actor, list, given));
    }

    @Operation(operationId = "withdrawRecovery", summary = "Withdraw a list without answers")
    @ApiResponse(responseCode = "409", description = "it has answers, or was withdrawn before")
    @PostMapping("/{list}/withdraw")
    ListView withdraw(Actor actor, @PathVariable String list, @RequestBody Reason reason) {
        return ListView.of(recoveries.withdraw(actor, list, reason.reason()));
    }
}
