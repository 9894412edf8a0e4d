package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.SQLTransientConnectionException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import javax.sql.DataSource;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.People;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;

/** More requests than the server can work on: the answers say so, and reading goes on. */
@ServerTest
class OverloadTest {

    private static final int UPLOADS = 200;

    @Autowired
    private Server server;

    @Autowired
    private DataSource dataSource;

    @Test
    void parallelUploadsAreTakenOrToldTheTrueReason() throws Exception {
        List<Client> workshops = new ArrayList<>();
        List<String> cases = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            Client workshop = server.as(server.newUser(Role.WORKSHOP));
            workshops.add(workshop);
            cases.add(open(workshop).json().get("number").asString());
        }
        Client reader = server.as(server.newUser(Role.WORKSHOP));
        ExecutorService senders = Executors.newFixedThreadPool(UPLOADS);
        List<Future<Answer>> answers = new ArrayList<>();
        try {
            for (int i = 0; i < UPLOADS; i++) {
                int who = i % workshops.size();
                answers.add(senders.submit(() ->
                        workshops.get(who).upload(People.evidence(cases.get(who)), "d.csv", People.drive(600), null)));
            }
            while (answers.stream().anyMatch(answer -> !answer.isDone())) {
                assertThat(reader.get("/api/v1/cases").status()).isEqualTo(200);
            }
        } finally {
            senders.shutdown();
        }
        int[] stored = new int[workshops.size()];
        for (int i = 0; i < UPLOADS; i++) {
            Answer answer = answers.get(i).get();
            assertThat(answer.status()).as(answer.toString()).isIn(201, 429, 503);
            if (answer.status() == 201) {
                stored[i % workshops.size()]++;
            } else {
                assertThat(answer.header("retry-after")).isPresent();
                assertThat(answer.json().get("type").asString())
                        .endsWith(answer.status() == 429 ? "#too-many-at-once" : "#server-busy");
            }
        }
        for (int i = 0; i < workshops.size(); i++) {
            assertThat(workshops
                            .get(i)
                            .get("/api/v1/cases/" + cases.get(i))
                            .json()
                            .get("evidence"))
                    .hasSize(stored[i]);
        }
        assertThat(Arrays.stream(stored).sum()).isPositive();
    }

    @Test
    void readingHasConnectionsOfItsOwn() throws Exception {
        User user = server.newUser(Role.WORKSHOP);
        Client workshop = server.as(user);
        Client pages = server.browser(user);
        String number = open(workshop).json().get("number").asString();
        List<Connection> all = new ArrayList<>();
        try {
            takeAll(all);
            assertThat(workshop.get("/api/v1/cases").status()).isEqualTo(200);
            assertThat(pages.get("/cases/" + number).status()).isEqualTo(200);
            assertThat(server.management().get("/actuator/health/readiness").status())
                    .isEqualTo(200);
            Answer busy = open(workshop);
            assertThat(busy.status()).as(busy.toString()).isEqualTo(503);
            assertThat(busy.json().get("type").asString()).endsWith("#server-busy");
        } finally {
            for (Connection one : all) {
                one.close();
            }
        }
        assertThat(open(workshop).status()).isEqualTo(201);
    }

    @SuppressWarnings("resource") // the caller closes them
    private void takeAll(List<Connection> all) throws Exception {
        try {
            while (true) {
                all.add(dataSource.getConnection());
            }
        } catch (SQLTransientConnectionException none) {
            assertThat(none.getMessage()).contains("not available");
        }
    }

    private static Answer open(Client workshop) {
        return workshop.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}");
    }
}
