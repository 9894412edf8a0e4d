package org.voltdocket.claim;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.voltdocket.kernel.Role;

/** Every state with every action and every role, against a table written out by hand. */
class ClaimTransitionsTest {

    /** Rows are states, columns actions in the order of the head; a dash is refused. */
    private static final String TABLE = """
            state          | submit    | take      | ask            | answer    | approve  | decline  | goodwill | confirm | refuse | settle  | withdraw
            draft          | submitted | -         | -              | -         | -        | -        | -        | -       | -      | -       | withdrawn
            submitted      | -         | in-review | -              | -         | -        | -        | -        | -       | -      | -       | withdrawn
            in-review      | -         | -         | evidence-asked | -         | approved | declined | goodwill | -       | -      | -       | withdrawn
            evidence-asked | -         | in-review | -              | in-review | -        | -        | -        | -       | -      | -       | withdrawn
            approved       | -         | -         | -              | -         | -        | -        | -        | -       | -      | settled | -
            declined       | -         | -         | -              | -         | -        | -        | -        | -       | -      | settled | -
            goodwill       | -         | -         | -              | -         | -        | -        | -        | -       | -      | settled | -
            settled        | -         | -         | -              | -         | -        | -        | -        | -       | -      | -       | -
            withdrawn      | -         | -         | -              | -         | -        | -        | -        | -       | -      | -       | -
            """;

    private static final String ROLES = """
            submit   | WORKSHOP
            take     | CLERK ADMIN
            ask      | CLERK ADMIN
            answer   | WORKSHOP
            approve  | CLERK ADMIN
            decline  | CLERK ADMIN
            goodwill | CLERK ADMIN
            confirm  | CLERK ADMIN
            refuse   | CLERK ADMIN
            settle   | CLERK ADMIN
            withdraw | WORKSHOP
            """;

    private static List<List<String>> cells(String table) {
        return table.lines()
                .map(line -> Arrays.stream(line.split("\\|")).map(String::strip).toList())
                .toList();
    }

    @Test
    void everyStateWithEveryActionLeadsWhereTheTableSays() {
        List<List<String>> rows = cells(TABLE);
        List<String> head = rows.get(0);
        assertThat(head.subList(1, head.size()))
                .containsExactly(
                        Arrays.stream(ClaimAction.values()).map(ClaimAction::id).toArray(String[]::new));
        assertThat(rows.stream().skip(1).map(row -> row.get(0)))
                .containsExactly(
                        Arrays.stream(ClaimState.values()).map(ClaimState::id).toArray(String[]::new));
        for (List<String> row : rows.subList(1, rows.size())) {
            ClaimState from = ClaimState.of(row.get(0));
            List<ClaimAction> allowed = new ArrayList<>();
            for (int i = 1; i < row.size(); i++) {
                ClaimAction action = ClaimAction.of(head.get(i)).orElseThrow();
                String to =
                        ClaimTransitions.after(from, action).map(ClaimState::id).orElse("-");
                assertThat(to).as(from.id() + " " + action.id()).isEqualTo(row.get(i));
                if (!row.get(i).equals("-")) {
                    allowed.add(action);
                }
            }
            assertThat(ClaimTransitions.from(from)).containsExactlyElementsOf(allowed);
            assertThat(from.isEnd()).isEqualTo(allowed.isEmpty());
        }
    }

    @Test
    void everyActionIsForTheRolesOfTheTable() {
        List<List<String>> rows = cells(ROLES);
        assertThat(rows).hasSameSizeAs(ClaimAction.values());
        for (List<String> row : rows) {
            ClaimAction action = ClaimAction.of(row.get(0)).orElseThrow();
            for (Role role : Role.values()) {
                assertThat(action.isFor(role))
                        .as(action.id() + " by " + role)
                        .isEqualTo(List.of(row.get(1).split(" ")).contains(role.name()));
            }
        }
    }

    /** With a decision that waits for its second person, against a list written out by hand. */
    @Test
    void whileADecisionWaitsItIsConfirmedOrRefusedOrOvertaken() {
        for (ClaimState kind : List.of(ClaimState.APPROVED, ClaimState.GOODWILL)) {
            Optional<ClaimState> waits = Optional.of(kind);
            assertThat(ClaimTransitions.from(ClaimState.IN_REVIEW, waits))
                    .containsExactly(ClaimAction.ASK, ClaimAction.CONFIRM, ClaimAction.REFUSE, ClaimAction.WITHDRAW);
            assertThat(ClaimTransitions.after(ClaimState.IN_REVIEW, waits, ClaimAction.CONFIRM))
                    .hasValue(kind);
            assertThat(ClaimTransitions.after(ClaimState.IN_REVIEW, waits, ClaimAction.REFUSE))
                    .hasValue(ClaimState.IN_REVIEW);
            assertThat(ClaimTransitions.after(ClaimState.IN_REVIEW, waits, ClaimAction.ASK))
                    .hasValue(ClaimState.EVIDENCE_ASKED);
            assertThat(ClaimTransitions.after(ClaimState.IN_REVIEW, waits, ClaimAction.WITHDRAW))
                    .hasValue(ClaimState.WITHDRAWN);
        }
        for (ClaimState state : ClaimState.values()) {
            assertThat(ClaimTransitions.from(state, Optional.empty())).isEqualTo(ClaimTransitions.from(state));
        }
    }
}
