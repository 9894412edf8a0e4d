package org.voltdocket.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.kernel.Actor;

/**
 * Fills the catalogue of the demo once, as an administrator would: two invented suppliers with five types, whose batches
 * contain the serials of some demo cases. The serial of one demo case looks like a type but is in none of its batches.
 */
@Component
@Profile("demo")
class DemoCatalogue implements ApplicationRunner {

    private static final List<String> FILES = List.of("suppliers.csv", "types.csv", "ranges.csv", "sales.csv");

    private final CatalogueService catalogue;

    DemoCatalogue(CatalogueService catalogue) {
        this.catalogue = catalogue;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (catalogue.suppliers().isEmpty()) {
            FILES.forEach(name -> catalogue.take(Actor.system(), name, content(name)));
        }
    }

    static byte[] content(String name) {
        try (InputStream in = DemoCatalogue.class.getResourceAsStream("/demo/" + name)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
