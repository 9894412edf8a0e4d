package org.voltdocket.evidence.original;

import io.micrometer.core.instrument.Metrics;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.voltdocket.kernel.Sha256;
import software.amazon.awssdk.core.exception.SdkException;
import software.amazon.awssdk.core.sync.RequestBody;
import software.amazon.awssdk.services.s3.S3Client;
import software.amazon.awssdk.services.s3.model.NoSuchKeyException;
import software.amazon.awssdk.services.s3.model.S3Object;

/** Objects named by the digest of their bytes. Nothing is ever changed; only an erasure removes an object. */
public final class ObjectStore implements AutoCloseable {

    private static final Logger LOG = LoggerFactory.getLogger(ObjectStore.class);

    /** Before every name: what else a bucket may hold is no concern of this server. */
    private static final String FOLDER = "originals/";

    private static final Duration ASKED_AGAIN = Duration.ofSeconds(10);

    private final StoreSettings settings;
    private final S3Client client;
    private volatile State state;

    public ObjectStore(StoreSettings settings) {
        this.settings = settings;
        this.client = S3ClientFactory.of(settings);
    }

    /**
     * Whether it answers.
     *
     * @param trouble what it, or the way to it, said; null where it answers
     */
    public record State(String trouble, long askedAt) {

        public boolean answers() {
            return trouble == null;
        }
    }

    /** Name of the object that holds the bytes of that digest. */
    public static String name(Sha256 sha256) {
        return FOLDER + sha256.hex().substring(0, 2) + "/" + sha256.hex();
    }

    /**
     * Stores a file under its digest; an existing object is overwritten with the same bytes. When this returns, the store
     * has the whole file: it compares the MD5 before it accepts it.
     *
     * @throws ObjectStoreUnavailableException if it does not accept the file
     */
    public void put(Sha256 sha256, Path file) {
        String md5 = md5(file);
        asked(
                "put",
                () -> client.putObject(
                        put -> put.bucket(settings.bucket()).key(name(sha256)).contentMD5(md5),
                        RequestBody.fromFile(file)));
    }

    /**
     * Opens an object for reading; the caller verifies its digest.
     *
     * @throws ObjectStoreUnavailableException if the store does not answer
     * @throws IllegalStateException if there is no such object
     */
    public InputStream open(Sha256 sha256) {
        try {
            return asked(
                    "get",
                    () -> client.getObject(get -> get.bucket(settings.bucket()).key(name(sha256))));
        } catch (NoSuchKeyException e) {
            throw new IllegalStateException(
                    "The store of original files (" + settings + ") has no object " + name(sha256)
                            + ", which is evidence. Bring it back from the store's own backup or versions.",
                    e);
        }
    }

    /** Removes an object; one that is not there is no error. */
    void remove(Sha256 sha256) {
        asked(
                "remove",
                () -> client.deleteObject(one -> one.bucket(settings.bucket()).key(name(sha256))));
    }

    /** What a broken stream of {@link #open} is: the store went away in the middle. */
    public ObjectStoreUnavailableException brokeOff(IOException e) {
        return away(e);
    }

    /** Hands over the names of all objects, so many at a time as the store tells at once, in its order. */
    public void eachName(Consumer<List<String>> some) {
        String after = null;
        boolean more = true;
        while (more) {
            String from = after;
            var answer = asked(
                    "list",
                    () -> client.listObjectsV2(list ->
                            list.bucket(settings.bucket()).prefix(FOLDER).startAfter(from)));
            List<String> names = answer.contents().stream().map(S3Object::key).toList();
            // some stores list a folder as an object
            some.accept(names.stream().filter(name -> !name.endsWith("/")).toList());
            more = Boolean.TRUE.equals(answer.isTruncated()) && !names.isEmpty();
            after = names.isEmpty() ? null : names.get(names.size() - 1);
        }
    }

    /** The digest that an object's name tells; null where it is no name of this server's. */
    public static Sha256 digest(String name) {
        String hex = name.substring(name.lastIndexOf('/') + 1);
        return hex.matches("[0-9a-f]{64}") && name(new Sha256(hex)).equals(name) ? new Sha256(hex) : null;
    }

    /** Whether it answers, asked anew every ten seconds at most. */
    public State state() {
        State known = state;
        if (known == null || System.nanoTime() - known.askedAt() > ASKED_AGAIN.toNanos()) {
            known = ask();
            state = known;
        }
        return known;
    }

    private State ask() {
        try {
            asked(
                    "state",
                    () -> client.headBucket(head -> head.bucket(settings.bucket())
                            .overrideConfiguration(
                                    once -> once.apiCallTimeout(S3ClientFactory.CONNECT.plusSeconds(1)))));
            return new State(null, System.nanoTime());
        } catch (ObjectStoreUnavailableException e) {
            return new State(e.reason(), System.nanoTime());
        }
    }

    /** Where it is, for administrators. */
    public String where() {
        return settings.toString();
    }

    private <T> T asked(String act, Supplier<T> call) {
        long start = System.nanoTime();
        String outcome = "away";
        try {
            T answer = call.get();
            outcome = "done";
            return answer;
        } catch (NoSuchKeyException e) {
            outcome = "missing";
            throw e;
        } catch (SdkException e) {
            throw away(e);
        } finally {
            Metrics.timer("voltdocket.originals.store", "act", act, "outcome", outcome)
                    .record(System.nanoTime() - start, TimeUnit.NANOSECONDS);
        }
    }

    private ObjectStoreUnavailableException away(Exception e) {
        String reason = settings + ": " + said(e);
        LOG.warn("The store of original files does not answer: {}", reason);
        state = new State(reason, System.nanoTime());
        return new ObjectStoreUnavailableException(reason, e);
    }

    /** What the client and, where that is something else, the connection beneath it said. */
    private static String said(Exception e) {
        Throwable first = e;
        while (first.getCause() != null && first.getCause() != first) {
            first = first.getCause();
        }
        String client = String.valueOf(e.getMessage()).replaceFirst(" *\\(SDK Attempt Count: \\d+\\)", "");
        String beneath = String.valueOf(first.getMessage());
        return client.contains(beneath) ? client : client + " (" + beneath + ")";
    }

    private static String md5(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest md5 = MessageDigest.getInstance("MD5");
            byte[] block = new byte[1 << 16];
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                md5.update(block, 0, n);
            }
            return Base64.getEncoder().encodeToString(md5.digest());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        client.close();
    }
}
