package org.voltdocket.trail;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Auditors verify the chain by page and by script, and each verification is itself kept. */
@ServerTest
class TrailPagesTest {

    @Autowired
    private Server server;

    @Autowired
    private Trail trail;

    @Test
    void thePageVerifiesAgainstANotedHead() {
        Client auditor = server.browser(server.user(Role.AUDITOR));
        TrailHead head = trail.head().orElseThrow();
        Answer holds = auditor.postForm("/trail", Map.of("noted", head.toString()));
        assertThat(holds.status()).isEqualTo(200);
        assertThat(holds.text()).contains("The trail is intact").contains("earlier head unchanged");
        Answer other = auditor.postForm("/trail", Map.of("noted", head.position() + ":" + "0".repeat(64)));
        assertThat(other.text()).contains("The trail is damaged at entry " + head.position());
        Answer cut = auditor.postForm("/trail", Map.of("noted", "99999999:" + head.hash()));
        assertThat(cut.text()).contains("the end was cut off");
        assertThat(auditor.postForm("/trail", Map.of("noted", "nothing")).status())
                .isEqualTo(400);
    }

    @Test
    void aVerificationByScriptIsKeptInTheTrail() {
        Server.User admin = server.user(Role.ADMIN);
        Answer answer = server.as(admin).postJson("/api/v1/trail/verify", "");
        assertThat(answer.json().get("holds").asBoolean()).isTrue();
        List<TrailEntry> kept = trail.of("trail");
        assertThat(kept).anySatisfy(entry -> {
            assertThat(entry.actor().user()).isEqualTo(admin.name());
            assertThat(entry.details())
                    .containsEntry("trail.head", answer.json().get("head").asString());
        });
    }

    @Test
    void changesOfAccountsSayWhatWasBeforeAndAfter() {
        Server.User admin = server.user(Role.ADMIN);
        Client page = server.browser(admin);
        page.postForm("/accounts", Map.of("name", "trail-clerk", "role", "CLERK", "of", ""));
        List<TrailEntry> made = trail.of("account/trail-clerk");
        assertThat(made).extracting(TrailEntry::act).containsExactly("account-created", "account-invited");
        assertThat(made.get(0).details()).containsEntry("account.role", "CLERK");
        String list = page.get("/accounts").text();
        String id = list.replaceAll("(?s).*?trail-clerk.*?/accounts/([0-9a-f-]{36})/standing.*", "$1");
        page.postForm("/accounts/" + id + "/standing", Map.of("enabled", "false"));
        TrailEntry disabled = trail.of("account/trail-clerk").get(2);
        assertThat(disabled.act()).isEqualTo("account-disabled");
        assertThat(disabled.details()).containsEntry("account.enabled", Map.of("old", true, "new", false));
        assertThat(page.get("/trail?subject=account/trail-clerk").text())
                .contains("Account disabled")
                .contains("true → false");
    }
}
