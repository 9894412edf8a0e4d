package org.voltdocket.support;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.springframework.core.env.Environment;
import org.voltdocket.access.AccountService;
import org.voltdocket.access.NewAccount;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import tools.jackson.databind.json.JsonMapper;

/** The running server as a test sees it: makes workshops and accounts, and speaks HTTP as one of them. */
public final class Server {

    public static final String FIRST_ADMIN = "first-admin";

    /** The password of every account made here. */
    public static final String PASSWORD = "test-only words";

    /** The key for original files, 32 bytes in Base64. */
    public static final String MASTER_KEY = "dGVzdC1vbmx5IHRlc3Qtb25seSB0ZXN0LW9ubHkga2U=";

    private static final JsonMapper JSON = JsonMapper.shared();
    /** A benchmark over a database that is there begins where no name is taken. */
    private static final AtomicInteger COUNTER = new AtomicInteger(Integer.getInteger("voltdocket.bench.names", 0));

    private final AccountService accounts;
    private final Environment environment;
    private final Map<Role, User> shared = new ConcurrentHashMap<>();

    Server(AccountService accounts, Environment environment) {
        this.accounts = accounts;
        this.environment = environment;
    }

    /** An account with its token. {@code actor} is for calls of a room's own door. */
    public record User(String name, String token, Actor actor) {}

    /** Where it listens, such as {@code http://localhost:40123}. */
    public String url() {
        return "http://localhost:" + environment.getProperty("local.server.port");
    }

    /** Calls of health and metrics at the port of their own, without any sign-in. */
    public Client management() {
        return new Client("http://localhost:" + environment.getProperty("local.management.port"));
    }

    /** A new workshop of a name nobody else has. */
    public UUID newWorkshop() {
        return accounts.createWorkshop(Actor.system(), "Workshop " + COUNTER.incrementAndGet())
                .id();
    }

    /** A new account of that role, for {@link Role#WORKSHOP} with a new workshop of its own. */
    public User newUser(Role role) {
        return newUser(role, role == Role.WORKSHOP ? Optional.of(newWorkshop()) : Optional.empty());
    }

    /** A new account of that role and workshop, with a token. */
    public User newUser(Role role, Optional<UUID> workshop) {
        String name = role.name().toLowerCase(java.util.Locale.ROOT) + "-" + COUNTER.incrementAndGet();
        accounts.createUser(Actor.system(), new NewAccount(name, PASSWORD, role, workshop));
        Answer made = anonymous().basic(name, PASSWORD).postJson("/api/v1/tokens", "{\"name\":\"test\"}");
        if (made.status() != 201) {
            throw new AssertionError("no token: " + made);
        }
        String token = JSON.readTree(made.text()).get("token").asString();
        return new User(name, token, new Actor(name, role, workshop));
    }

    /** One account per role, the same for all tests of the run. */
    public User user(Role role) {
        return shared.computeIfAbsent(role, this::newUser);
    }

    /** Calls without any sign-in. */
    public Client anonymous() {
        return new Client(url());
    }

    /** Calls of the API with the user's token. */
    public Client as(User user) {
        return anonymous().header("Authorization", "Bearer " + user.token());
    }

    /** Calls of the API with the token of the role's shared user. */
    public Client as(Role role) {
        return as(user(role));
    }

    /** Pages, in a session signed in through the form. */
    public Client browser(User user) {
        Client client = anonymous().header("Accept", "text/html,application/xhtml+xml");
        Answer in = client.postForm("/sign-in", Map.of("username", user.name(), "password", PASSWORD));
        if (in.status() != 302 || in.header("location").orElse("").contains("sign-in")) {
            throw new AssertionError("not signed in: " + in);
        }
        return client;
    }

    static String basic(String user, String password) {
        return "Basic " + Base64.getEncoder().encodeToString((user + ":" + password).getBytes(StandardCharsets.UTF_8));
    }
}
