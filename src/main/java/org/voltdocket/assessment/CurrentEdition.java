package org.voltdocket.assessment;

import java.util.function.Supplier;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.stereotype.Component;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.assessment.edition.ShippedEditionsLoader;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The edition of the rule book that new assessments are made by, as the database says at this moment. */
@Component
public class CurrentEdition {

    private final Supplier<Rulebook> rulebook;

    /** @param shipped named, so that the editions are kept before anybody asks */
    @Autowired
    CurrentEdition(EditionService editions, ShippedEditionsLoader shipped) {
        this.rulebook = editions::rulebookInForce;
    }

    /** @param rulebook read elsewhere */
    CurrentEdition(Rulebook rulebook) {
        this.rulebook = () -> rulebook;
    }

    /** Ask once for one assessment: it may be another the next time. */
    public Rulebook rulebook() {
        return rulebook.get();
    }
}
