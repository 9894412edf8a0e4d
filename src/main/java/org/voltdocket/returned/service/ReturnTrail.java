package org.voltdocket.returned.service;

import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Actor;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.trail.Trail;

/** Writes the trail of returned batteries. */
@Component
class ReturnTrail {

    private final Trail trail;

    ReturnTrail(Trail trail) {
        this.trail = trail;
    }

    /** Adds an entry to the trail of the battery's case, or under the number of the return where it has no case. */
    void record(Actor actor, String act, ReturnedBattery battery, Map<String, Object> details) {
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("return.number", battery.number());
        all.putAll(details);
        trail.record(actor, act, battery.file().map(ref -> ref.number().value()).orElse(battery.number()), all);
    }
}
