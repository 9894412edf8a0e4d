package org.voltdocket.assessment.edition;

import jakarta.annotation.PostConstruct;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Actor;

/**
 * Stores the editions of the program when the server starts, and puts one in force if none is.
 * Any number of nodes may start at once.
 */
@Component
class ShippedEditionsLoader {

    private static final Logger LOG = LoggerFactory.getLogger(ShippedEditionsLoader.class);

    private final EditionRepository store;
    private final String first;
    private final TransactionTemplate together;

    ShippedEditionsLoader(
            EditionRepository store,
            @Value("${voltdocket.rulebook:" + Rulebook.CURRENT_EDITION + "}") String first,
            PlatformTransactionManager transactions) {
        this.store = store;
        this.first = first;
        this.together = new TransactionTemplate(transactions);
    }

    /** @throws EditionMismatchException if a released edition differs from the stored one */
    @PostConstruct
    void keep() throws IOException {
        for (Resource file :
                new PathMatchingResourcePatternResolver().getResources("classpath:shared/rulebook/*.yaml")) {
            try (InputStream in = file.getInputStream()) {
                keep(in.readAllBytes());
            } catch (UncheckedIOException e) {
                throw e.getCause();
            }
        }
        together.executeWithoutResult(tx -> beginWith());
    }

    void keep(byte[] text) {
        Rulebook book = Rulebook.read(new ByteArrayInputStream(text));
        Optional<Edition> known = store.find(book.edition()).filter(Edition::released);
        if (known.isPresent() && !known.get().sha256().equals(book.sha256())) {
            if (book.released()) {
                throw new EditionMismatchException(book.edition());
            }
            LOG.warn("Edition {} in this program is in the making; the released one is kept.", book.edition());
            return;
        }
        store.keep(
                book.edition(),
                book.sha256(),
                book.released(),
                "shipped",
                text,
                Actor.system().user());
    }

    private void beginWith() {
        store.lockInForce();
        if (store.inForce().isEmpty()) {
            Edition edition = store.find(first)
                    .filter(Edition::released)
                    .orElseThrow(() -> new IllegalStateException("There is no released rule book " + first
                            + ". Set voltdocket.rulebook to one that is under shared/rulebook."));
            store.putInForce(
                    edition.sha256(), Actor.system().user(), "First edition, at the first start of the server.");
        }
    }
}
