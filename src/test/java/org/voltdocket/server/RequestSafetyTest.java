package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.dossier.Pairs;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.People;
import org.voltdocket.support.Server;
import org.voltdocket.support.Server.User;
import org.voltdocket.support.ServerTest;

/** Host names, security headers and names of files. */
@ServerTest
class RequestSafetyTest {

    private static final byte[] PDF =
            "%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nendobj\ntrailer\n<< /Root 1 0 R >>\nstartxref\n0\n%%EOF\n"
                    .getBytes(StandardCharsets.US_ASCII);

    @Autowired
    private Server server;

    @ParameterizedTest
    @ValueSource(strings = {"/sign-in", "/cases", "/api/v1/cases", "/manual"})
    void aForeignHostIsRefusedAndNeverRepeated(String path) throws Exception {
        for (String host :
                new String[] {"other.example", "other.example:8080", "192.0.2.7", "localhost.other.example"}) {
            String answer = raw("GET " + path + " HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n\r\n");
            assertThat(answer).startsWith("HTTP/1.1 421").doesNotContain("other.example", "192.0.2.7");
        }
    }

    @Test
    void redirectsAndLinksDoNotTakeTheHostOfTheRequest() throws Exception {
        String redirect = raw("GET /cases HTTP/1.1\r\nHost: voltdocket.example:99\r\nConnection: close\r\n\r\n");
        assertThat(redirect).startsWith("HTTP/1.1 302").containsIgnoringCase("location: /sign-in");
        User user = server.newUser(Role.WORKSHOP);
        String number = open(server.as(user));
        assertThat(server.browser(user).get("/cases/" + number).text())
                .contains("https://voltdocket.example/cases/" + number)
                .doesNotContain(server.url());
    }

    @Test
    void everyAnswerLimitsWhatOthersMayDoWithIt() {
        for (String path : new String[] {"/sign-in", "/api/v1/cases", "/manual", "/voltdocket.css"}) {
            Answer answer = server.anonymous().get(path);
            assertThat(answer.header("permissions-policy").orElse(""))
                    .as(path)
                    .contains("camera=(self)", "microphone=()", "geolocation=()");
            assertThat(answer.header("cross-origin-opener-policy")).contains("same-origin");
            assertThat(answer.header("cross-origin-resource-policy")).contains("same-origin");
        }
    }

    @Test
    void aFileIsServedUnderAnExtensionOfItsTypeAndWithoutDirectionMarks() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String number = open(workshop);
        Answer stored = workshop.upload(People.evidence(number), "delivery\u202efdp.exe", PDF, null);
        assertThat(stored.status()).as(stored.toString()).isEqualTo(201);
        assertThat(stored.json().get("fileName").asString()).isEqualTo("deliveryfdp.exe");
        Answer served =
                workshop.get("/api/v1/evidence/" + stored.json().get("id").asString() + "/content");
        assertThat(served.header("content-disposition").orElse(""))
                .contains("deliveryfdp.pdf")
                .doesNotContain("exe");
        assertThat(served.header("content-type")).contains("application/pdf");
    }

    @Test
    void aSecondFileIsRefusedAndNeitherIsStored() {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        String number = open(workshop);
        String part = "--b\r\nContent-Disposition: form-data; name=\"file\"; filename=\"%s\"\r\n"
                + "Content-Type: application/octet-stream\r\n\r\n%s\r\n";
        String body = String.format(part, "a.json", new String(People.battery(), StandardCharsets.UTF_8))
                + String.format(part, "b.json", new String(People.battery(), StandardCharsets.UTF_8)) + "--b--\r\n";
        Answer refused = workshop.send(
                "POST", People.evidence(number), BodyPublishers.ofString(body), "multipart/form-data; boundary=b");
        assertThat(refused.status()).as(refused.toString()).isEqualTo(400);
        assertThat(refused.json().get("errors").get(0).get("field").asString()).isEqualTo("file");
        assertThat(workshop.get("/api/v1/cases/" + number).json().get("evidence"))
                .isEmpty();
    }

    private static String open(Client workshop) {
        return workshop.postJson(
                        "/api/v1/cases",
                        "{\"batterySerial\":\"" + Pairs.serial() + "\",\"vin\":\"" + Pairs.vin() + "\"}")
                .json()
                .get("number")
                .asString();
    }

    private String raw(String request) throws IOException {
        URI at = URI.create(server.url());
        try (Socket socket = new Socket(at.getHost(), at.getPort())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
