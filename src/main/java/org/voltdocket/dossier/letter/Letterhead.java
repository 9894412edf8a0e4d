package org.voltdocket.dossier.letter;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Sender, contact and objection period of the letters. */
@Component
class Letterhead {

    private final String sender;
    private final String contact;
    private final int days;

    /**
     * @param sender name of the distributor
     * @param contact where objections go: an address of any kind
     * @param days calendar days after the day of the decision in which a workshop may object, 1 to 3650
     */
    Letterhead(
            @Value("${voltdocket.letter.sender:Battery distributor, warranty desk}") String sender,
            @Value("${voltdocket.letter.contact:the warranty desk of the distributor}") String contact,
            @Value("${voltdocket.letter.objection-days:30}") int days) {
        if (days < 1 || days > 3650) {
            throw new IllegalArgumentException(
                    "voltdocket.letter.objection-days is " + days + "; it is a number of days from 1 to 3650");
        }
        this.sender = sender;
        this.contact = contact;
        this.days = days;
    }

    String sender() {
        return sender;
    }

    String contact() {
        return contact;
    }

    int days() {
        return days;
    }
}
