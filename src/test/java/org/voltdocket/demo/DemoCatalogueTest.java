package org.voltdocket.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.annotation.Transactional;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.catalogue.Product;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.Actor;
import org.voltdocket.support.ServerTest;

/** The demo's catalogue is taken without an error and says of the demo's batteries what their cases say. */
@ServerTest
class DemoCatalogueTest {

    @Autowired
    private CatalogueService catalogue;

    @Test
    @Transactional
    void itFitsTheDemoCases() {
        for (String name : List.of("suppliers.csv", "types.csv", "ranges.csv", "sales.csv")) {
            catalogue.take(Actor.system(), name, DemoCatalogue.content(name));
        }
        int found = 0;
        int out = 0;
        for (DemoCase one : DemoCase.ALL) {
            GeneratedCase made = one.generate();
            Facts.BatteryFacts facts = made.facts().battery();
            Product product = catalogue.of(made.serial()).orElse(null);
            if (product != null) {
                found++;
                assertThat(product.type().chemistry()).isEqualTo(facts.chemistry());
                assertThat(product.type().capacityAh()).isEqualTo(facts.capacityAh());
                assertThat(product.range().producedOn()).isEqualTo(facts.producedOn());
            }
            out += catalogue.outOfRange(made.serial()).isPresent() ? 1 : 0;
        }
        assertThat(found).isGreaterThanOrEqualTo(6);
        assertThat(out).isEqualTo(1);
    }
}
