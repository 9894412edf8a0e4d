package org.voltdocket.server;

import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.People;
import org.voltdocket.support.Server;

/** Accounts of a benchmark, made through the pages of the first administrator. */
final class BenchPeople {

    private final BenchServer server;
    private final Client pages;

    BenchPeople(BenchServer server) {
        this.server = server;
        this.pages = pages(BenchServer.ADMIN);
    }

    /** Pages in a session of that account; forms may be sent with its CSRF token. */
    Client pages(String account) {
        Client signedIn = server.client().header("Accept", "text/html");
        signedIn.postForm("/sign-in", Map.of("username", account, "password", Server.PASSWORD));
        return signedIn.header("X-CSRF-TOKEN", signedIn.csrf());
    }

    /** Calls of the first administrator. */
    Client admin() {
        return token(BenchServer.ADMIN);
    }

    /** Calls of a new workshop of its own. */
    Client workshop(String name) {
        String title = "Garage " + name;
        pages.postForm("/accounts/workshops", Map.of("workshop", title));
        Matcher id = Pattern.compile("<option value=\"([0-9a-f-]{36})\"[^>]*>" + Pattern.quote(title) + "<")
                .matcher(pages.get("/accounts").text());
        if (!id.find()) {
            throw new IllegalStateException("no workshop was made");
        }
        return account(name, "WORKSHOP", id.group(1));
    }

    /** Calls of a new account of the distributor. */
    Client distributor(String name, String role) {
        return account(name, role, "");
    }

    private Client account(String name, String role, String workshop) {
        People.account(pages, name, role, workshop);
        return token(name);
    }

    private Client token(String user) {
        Answer made = server.client().basic(user, Server.PASSWORD).postJson("/api/v1/tokens", "{\"name\":\"bench\"}");
        return server.client()
                .header("Authorization", "Bearer " + expect(201, made).json().get("token").stringValue());
    }

    /** A new case of that caller. */
    static String open(Client caller, String serial, int number) {
        String vin = String.format("ZZ0%c%013d", serial.charAt(0), number);
        return expect(201, caller.postJson(
                        "/api/v1/cases", "{\"batterySerial\":\"" + serial + number + "\",\"vin\":\"" + vin + "\"}"))
                .json()
                .get("number")
                .stringValue();
    }

    static Answer expect(int status, Answer answer) {
        if (answer.status() != status) {
            throw new IllegalStateException(answer.toString());
        }
        return answer;
    }
}
