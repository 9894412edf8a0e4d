package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.PatternLayout;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.LoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.read.ListAppender;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** What administrators and their tools see, and what the log does not say. */
@ServerTest
class WatchTest {

    @Autowired
    private Server server;

    @Autowired
    private JdbcClient db;

    @Autowired
    private Environment environment;

    @Test
    void metricsAreForAdministratorsOnly() {
        assertThat(server.management().get("/actuator/prometheus").status()).isEqualTo(401);
        for (Role role : List.of(Role.WORKSHOP, Role.CLERK, Role.AUDITOR)) {
            assertThat(server.as(role)
                            .at(server.management())
                            .get("/actuator/prometheus")
                            .status())
                    .as(role.name())
                    .isEqualTo(403);
        }
        server.as(Role.ADMIN).get("/api/v1/cases");
        Answer metrics = server.as(Role.ADMIN).at(server.management()).get("/actuator/prometheus");
        assertThat(metrics.status()).isEqualTo(200);
        assertThat(metrics.text())
                .contains("voltdocket_assessments_due", "voltdocket_database_bytes", "http_server_requests_seconds");
    }

    @Test
    void aliveAndReadyAreToldApartAndTellNoDetail() {
        for (String one : List.of("liveness", "readiness")) {
            Answer health = server.management().get("/actuator/health/" + one);
            assertThat(health.status()).isEqualTo(200);
            assertThat(health.text()).isEqualTo("{\"status\":\"UP\"}");
            assertThat(server.management()
                            .header("Accept", "text/html")
                            .get("/actuator/health/" + one)
                            .text())
                    .isEqualTo(health.text());
            assertThat(server.anonymous().get("/actuator/health/" + one).status())
                    .isNotEqualTo(200);
        }
    }

    @Test
    void theBoardShowsRefusalsSlowPagesRoomAndTheLastBackup() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String number = open(workshop, Pairs.vin());
        workshop.upload("/api/v1/cases/" + number + "/evidence", "x.csv", bytes("time_s\n1\n"), null);
        String file = "voltdocket-" + System.nanoTime() + ".dump";
        db.sql("insert into backup_taken (file, bytes) values (?, 12300000)")
                .param(file)
                .update();
        String page = server.browser(server.user(Role.ADMIN)).get("/watch").text();
        assertThat(page)
                .contains(file, "12.3 MB", "recording", "/api/v1/cases/{number}/evidence", "free of")
                .doesNotContain("??");
    }

    @Test
    void aRestoreThatNobodyTestedForAMonthIsWarnedOf() {
        String file = "voltdocket-" + System.nanoTime() + ".dump";
        String insert =
                "insert into restore_tested (tested_at, file, seconds) values (now() - cast(? as interval), ?, 42)";
        Client admin = server.browser(server.user(Role.ADMIN));
        db.sql(insert).param("40 days").param(file).update();
        assertThat(admin.get("/watch").text()).contains(file, "in 42 s", "No restore was tested in the last month");
        db.sql(insert).param("2 days").param(file + "2").update();
        assertThat(admin.get("/watch").text()).contains(file + "2").doesNotContain("No restore was tested", "??");
    }

    @Test
    void theLogNamesRequestAndCaseAndNeitherVinNorToken() {
        Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
        Logger requests = (Logger) LoggerFactory.getLogger("voltdocket.requests");
        ListAppender<ILoggingEvent> heard = new ListAppender<>();
        heard.start();
        requests.setLevel(Level.INFO);
        root.addAppender(heard);
        String vin = Pairs.vin();
        Server.User user = server.newUser(Role.WORKSHOP);
        String number;
        try {
            Client workshop = server.as(user);
            number = open(workshop, vin);
            Answer read = workshop.header("X-Request-Id", "mark-7").get("/api/v1/cases/" + number);
            assertThat(read.header("x-request-id")).contains("mark-7");
            assertThat(workshop.header("X-Request-Id", "no\tmark at all")
                            .get("/api/v1/cases")
                            .header("x-request-id"))
                    .isPresent()
                    .hasValueSatisfying(mark -> assertThat(mark).matches("[0-9a-f-]{13}"));
            workshop.get("/api/v1/cases?q=" + vin);
            workshop.upload("/api/v1/cases/" + number + "/evidence", "x.csv", bytes("time_s\n1\n"), null);
            workshop.postJson("/api/v1/cases", "{\"batterySerial\":\"?\",\"vin\":\"" + vin + "\"}");
            server.as(server.newUser(Role.WORKSHOP))
                    .postJson("/api/v1/cases", "{\"batterySerial\":\"SOME-1\",\"vin\":\"" + vin + "\"}");
            server.browser(user).get("/history/vehicle/" + vin);
            server.browser(server.newUser(Role.WORKSHOP)).get("/history/vehicle/" + vin);
            server.anonymous()
                    .header("Authorization", "Bearer " + user.token() + "x")
                    .get("/api/v1/cases");
            server.anonymous().get("/api/v1/nothing/" + vin);
        } finally {
            root.detachAppender(heard);
            requests.setLevel(null);
        }
        List<String> lines = heard.list.stream()
                .map(event -> event.getFormattedMessage() + " " + event.getMDCPropertyMap() + " "
                        + (event.getThrowableProxy() == null
                                ? ""
                                : ThrowableProxyUtil.asString(event.getThrowableProxy())))
                .toList();
        assertThat(lines).noneMatch(line -> line.contains(vin)).noneMatch(line -> line.contains(user.token()));
        assertThat(lines)
                .anyMatch(line -> line.startsWith("GET /api/v1/cases/{number} 200")
                        && line.contains("request=mark-7")
                        && line.contains("case=" + number));
    }

    /** Should a message carry one all the same, a library's for example, it does not reach the output. */
    @Test
    void whatLooksLikeAVinIsMaskedOnTheWayOut() {
        String vin = "1M8GDM9AXKP042788";
        assertThat(VinMaskingEncoder.mask("Key (vin)=(" + vin + ") exists")).isEqualTo("Key (vin)=((VIN)) exists");
        LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
        PatternLayout layout = new PatternLayout();
        layout.setContext(context);
        layout.getInstanceConverterMap().putAll(converters());
        layout.setPattern(environment.getProperty("logging.pattern.console"));
        layout.start();
        LoggingEvent event = new LoggingEvent(
                "", context.getLogger("a"), Level.ERROR, "of " + vin, new IllegalStateException("at " + vin), null);
        assertThat(layout.doLayout(event)).contains("of (VIN)", "at (VIN)").doesNotContain(vin);
    }

    @SuppressWarnings({"rawtypes", "unchecked"})
    private static java.util.Map converters() {
        return java.util.Map.of("wEx", (java.util.function.Supplier)
                org.springframework.boot.logging.logback.WhitespaceThrowableProxyConverter::new);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String open(Client workshop, String vin) {
        Answer answer = workshop.postJson(
                "/api/v1/cases", "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + vin + "\"}");
        assertThat(answer.status()).as(answer.toString()).isEqualTo(201);
        return answer.json().get("number").stringValue();
    }
}
