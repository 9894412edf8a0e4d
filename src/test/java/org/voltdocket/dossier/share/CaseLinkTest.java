package org.voltdocket.dossier.share;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.demo.Scenario;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import tools.jackson.databind.JsonNode;

/** Links to a case without an account. */
@ServerTest
class CaseLinkTest {

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    @Test
    void showsTheSummaryUntilItIsRevokedAndRecordsEachAccess() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        SentCase sent = SentCase.of(workshop, Scenario.SENSOR_READS_HIGH, 4741);
        JsonNode created =
                workshop.postJson(sent.api() + "/links", "{\"days\":7}").json();
        String path = URI.create(created.get("address").stringValue()).getPath();
        String secret = path.substring(path.lastIndexOf('/') + 1);
        assertThat(secret).as("128 bits in Base64").hasSize(22);
        assertThat(db.sql("select secret from case_link").query(String.class).list())
                .as("stored hashed")
                .doesNotContain(secret);

        Answer page = server.anonymous().header("Accept", "text/html").get(path);
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.header("x-robots-tag").orElseThrow()).contains("noindex");
        assertThat(page.header("cache-control").orElseThrow()).contains("no-store");
        assertThat(page.text())
                .contains("Do not replace the battery", "Battery test")
                .doesNotContain("SHA-256", "Claim", sent.number());
        server.anonymous().header("Accept", "text/html").get(path);
        JsonNode link = workshop.get(sent.api() + "/links").json().get(0);
        assertThat(link.get("accesses").asInt()).isEqualTo(2);
        assertThat(link.has("lastAccess")).isTrue();

        String id = created.get("id").stringValue();
        assertThat(workshop.delete(sent.api() + "/links/" + id).status()).isEqualTo(204);
        assertThat(server.anonymous().header("Accept", "text/html").get(path).status())
                .isEqualTo(404);
        assertThat(workshop.get(sent.api() + "/links")
                        .json()
                        .get(0)
                        .get("accesses")
                        .asInt())
                .isEqualTo(2);
        assertThat(db.sql("select act from trail_entry where subject = ?")
                        .param(sent.number())
                        .query(String.class)
                        .list())
                .containsAll(List.of("link-created", "link-revoked"));
    }

    @Test
    void anExpiredLinkOpensNothing() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        SentCase sent = SentCase.open(workshop);
        workshop.postJson(sent.api() + "/links", "{\"days\":1}");
        JsonNode link = workshop.get(sent.api() + "/links").json().get(0);
        CaseLink expiring = new CaseLink(
                UUID.fromString(link.get("id").stringValue()),
                new UUID(0, 0),
                Instant.parse(link.get("createdAt").stringValue()),
                "somebody",
                Instant.parse(link.get("expiresAt").stringValue()),
                null,
                0,
                null);
        assertThat(expiring.isOpen(expiring.expiresAt().minusMillis(1))).isTrue();
        assertThat(expiring.isOpen(expiring.expiresAt())).isFalse();
        assertThat(workshop.postJson(sent.api() + "/links", "{\"days\":91}").status())
                .isEqualTo(400);
    }
}
