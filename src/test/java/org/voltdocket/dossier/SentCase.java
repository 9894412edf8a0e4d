package org.voltdocket.dossier;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Map;
import org.voltdocket.demo.GeneratedCase;
import org.voltdocket.demo.GeneratedItem;
import org.voltdocket.demo.Generator;
import org.voltdocket.demo.Scenario;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;

/**
 * An invented case sent in as a workshop's script would.
 *
 * @param files by the SHA-256 that the server answered, in the order of sending
 */
public record SentCase(String number, Map<String, byte[]> files) {

    /** Opens a case with a pair of its own and sends every item of the scenario. */
    public static SentCase of(Client workshop, Scenario scenario, long seed) {
        SentCase sent = open(workshop);
        GeneratedCase made = Generator.generate(scenario, seed);
        for (GeneratedItem item : made.items()) {
            sent.send(workshop, item.fileName(), item.content(), null);
        }
        return sent;
    }

    /** Opens a case with what is known of one battery and vehicle, and sends nothing. */
    public static SentCase open(Client workshop) {
        Answer opened = workshop.postJson("/api/v1/cases", """
                {"batterySerial":"%s","vin":"%s",
                 "battery":{"chemistry":"agm","capacityAh":70,"ratedCrankingA":700,"crankingStandard":"EN",
                   "producedOn":"2025-08-01","fittedOn":"2025-10-05"},
                 "vehicle":{"chargingControl":"managed","stopStart":true},
                 "complaint":"Empty again after three weeks.","batteriesReplacedBefore":2}
                """.formatted(Pairs.serial(), Pairs.vin()));
        assertThat(opened.status()).as(opened.toString()).isEqualTo(201);
        return new SentCase(opened.json().get("number").stringValue(), new LinkedHashMap<>());
    }

    /** Sends one file more. */
    public void send(Client workshop, String name, byte[] content, String note) {
        Answer kept = workshop.upload("/api/v1/cases/" + number + "/evidence", name, content, note);
        assertThat(kept.status()).as(kept.toString()).isEqualTo(201);
        files.put(kept.json().get("sha256").stringValue(), content);
    }

    /** Address of the case in the API. */
    public String api() {
        return "/api/v1/cases/" + number;
    }
}
