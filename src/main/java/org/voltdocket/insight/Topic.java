package org.voltdocket.insight;

import java.util.Arrays;
import java.util.Optional;

/** A topic of the statistics; each has a page. */
public enum Topic {
    /** Share of batteries without fault, by workshop. */
    NO_FAULT("no-fault"),
    /** Share of claimed batteries, by week of production. */
    PRODUCTION("production-weeks"),
    CAUSES("causes"),
    TIME_TO_CLAIM("time-to-claim"),
    /** Vehicles that wore out several batteries. */
    REPEATED("repeated-vehicles"),
    MONEY("money"),
    /** Starting odds and stated probabilities compared with audited outcomes. */
    LEARNING("learning");

    private final String id;

    Topic(String id) {
        this.id = id;
    }

    /** The stable identifier used in addresses. */
    public String id() {
        return id;
    }

    /** The topic with this identifier. */
    public static Optional<Topic> find(String id) {
        return Arrays.stream(values()).filter(topic -> topic.id.equals(id)).findFirst();
    }
}
