package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Slow, large and deep request bodies, over loopback. */
@ServerTest
class RequestBodyTest {

    private static final int SOCKETS = 70;

    @Autowired
    private Server server;

    @Test
    void slowBodiesWithoutSignInHoldNoThreads() throws Exception {
        for (String path : List.of("/cases/new", "/api/v1/cases", "/sign-in")) {
            List<Socket> slow = new ArrayList<>();
            try {
                for (int i = 0; i < SOCKETS; i++) {
                    slow.add(open(path, "", "application/x-www-form-urlencoded"));
                }
                long start = System.nanoTime();
                assertThat(server.anonymous().get("/sign-in").status()).isEqualTo(200);
                assertThat(server.management().get("/actuator/health/liveness").status())
                        .isEqualTo(200);
                assertThat(Duration.ofNanos(System.nanoTime() - start)).as(path).isLessThan(Duration.ofSeconds(10));
            } finally {
                for (Socket socket : slow) {
                    socket.close();
                }
            }
        }
    }

    @Test
    void aSlowBodyOfASignedInSenderIsRefused() throws Exception {
        String token = "Authorization: Bearer " + server.user(Role.CLERK).token() + "\r\n";
        try (Socket socket = open("/api/v1/cases", token, "application/json")) {
            socket.setSoTimeout(30_000);
            OutputStream out = socket.getOutputStream();
            Thread trickle = new Thread(() -> {
                try {
                    while (true) {
                        out.write(' ');
                        out.flush();
                        Thread.sleep(200);
                    }
                } catch (IOException | InterruptedException e) {
                    // the server has closed the connection
                }
            });
            trickle.setDaemon(true);
            trickle.start();
            String answer = read(socket);
            assertThat(answer).startsWith("HTTP/1.1 408").contains("slow-request");
        }
    }

    @Test
    void aLargeBodyIsRefusedWithTheLimit() {
        String json = "{\"complaint\":\"" + "x".repeat(1 << 20) + "\"}";
        Answer known = server.as(Role.CLERK).postJson("/api/v1/cases", json);
        Answer chunked = server.as(Role.CLERK)
                .send(
                        "POST",
                        "/api/v1/cases",
                        BodyPublishers.ofInputStream(
                                () -> new ByteArrayInputStream(json.getBytes(StandardCharsets.UTF_8))),
                        "application/json");
        for (Answer one : List.of(known, chunked)) {
            assertThat(one.status()).as(one.toString()).isEqualTo(413);
            assertThat(one.json().get("maxBytes").asLong()).isEqualTo(1 << 20);
        }
    }

    @Test
    void deepJsonIsRefused() {
        Answer deep = server.as(Role.CLERK)
                .postJson("/api/v1/cases", "{\"complaint\":" + "[".repeat(65) + "]".repeat(65) + "}");
        assertThat(deep.status()).as(deep.toString()).isEqualTo(413);
        assertThat(deep.json().get("maxDepth").asInt()).isEqualTo(64);
    }

    private Socket open(String path, String header, String type) throws IOException {
        URI at = URI.create(server.url());
        Socket socket = new Socket(at.getHost(), at.getPort());
        socket.getOutputStream()
                .write(("POST " + path + " HTTP/1.1\r\nHost: localhost\r\n" + header + "Content-Type: " + type
                                + "\r\nContent-Length: 100000\r\n\r\n{")
                        .getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
        return socket;
    }

    private static String read(Socket socket) throws IOException {
        InputStream in = socket.getInputStream();
        byte[] buffer = new byte[8192];
        int length = in.read(buffer);
        return length < 0 ? "closed" : new String(buffer, 0, length, StandardCharsets.UTF_8);
    }
}
