package org.voltdocket.assessment;

import java.io.IOException;
import java.io.InputStream;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.rulebook.Rulebook;

/** The edition of the rule book that new assessments are made by. Read once, when the server starts. */
@Component
public class InForce {

    private final Rulebook rulebook;

    /** @throws IllegalStateException if there is no such edition */
    @Autowired
    InForce(@Value("${voltdocket.rulebook:2026.1}") String edition) {
        ClassPathResource file = new ClassPathResource("shared/rulebook/" + edition + ".yaml");
        try (InputStream in = file.getInputStream()) {
            this.rulebook = Rulebook.read(in);
        } catch (IOException e) {
            throw new IllegalStateException(
                    "There is no rule book " + edition
                            + ". Set voltdocket.rulebook to one that is under shared/rulebook.",
                    e);
        }
    }

    /** @param rulebook read elsewhere */
    InForce(Rulebook rulebook) {
        this.rulebook = rulebook;
    }

    public Rulebook rulebook() {
        return rulebook;
    }
}
