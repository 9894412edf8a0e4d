package org.voltdocket.dossier.display;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** What a quantity is about, in the order in which a page inside what is as it should be. */
public enum FindingTopic {
    CHARGING("answer-to-reported-need charging-share-when-low charging-test-best charging-test-loaded charging-when-low"
            + " failing-at-times highest-charging-voltage holding-share-when-low lift-when-cold lift-when-low load-drop"
            + " low-running-voltage-share managed over-voltage-share regulated-voltage regulation-spread"
            + " rise-when-slowing ripple ripple-in-drive sag-under-load uncharged-though-told"
            + " median-running-voltage charging-stopped low-voltage-spread over-voltage-spread charging-when-full"
            + " sag-over-rest best-of-sagging idle-voltage-of-drop drop-of-low-test"
            + " unsupported-share unsupported-yet-lifted"),
    SENSOR("charge-seen-by-vehicle-only offset-drive-and-rest-disagree offset-ways-disagree reported-charge-error"
            + " reported-charge-under-rest reported-drain-while-held rests-as-claimed-full"
            + " sensor-asleep-in-drive sensor-at-rest sensor-gain sensor-offset-by-clamp sensor-offset-by-fit"
            + " sensor-offset-together"),
    WIRING(
            "gap-by-voltage gap-while-charging harness-by-steps harness-resistance reported-voltage-bias reported-voltage-gain"
                    + " identical-voltages"),
    BATTERY("capacity-at-higher-current capacity-gap capacity-share charge-after-recharge charge-lost cranking-share"
            + " cranking-share-by-size rest-after-driving"
            + " peukert-exponent resistance-by-rating resistance-by-starts resistance-by-steps"
            + " voltage-after-recharge"),
    STARTS("compression-frequency compression-ripple compression-unevenness cranking-minimum cranking-plateau"
            + " inrush-sag recovery-time rows-in-start restart-minimum restart-trend stop-refusals"),
    CHARGE(
            "arrival-charge arrival-voltage charge-after-drive charge-before-drive charge-per-100-km charge-per-start daily-distance"
                    + " rest-left standing-drain standing-drain-by-voltage trip-length wake-up-length wake-up-share wake-ups"),
    CASE("batteries-replaced battery-age size-share type-step");

    private static final Map<String, FindingTopic> BY_QUANTITY = byQuantity();

    private final String quantities;

    FindingTopic(String quantities) {
        this.quantities = quantities;
    }

    /** For the words of a page. */
    public String id() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** @param quantity name without its number; {@link #CASE} for what is no quantity */
    static FindingTopic of(String quantity) {
        return BY_QUANTITY.getOrDefault(quantity, CASE);
    }

    private static Map<String, FindingTopic> byQuantity() {
        Map<String, FindingTopic> out = new TreeMap<>();
        for (FindingTopic topic : values()) {
            for (String quantity : topic.quantities.split(" ")) {
                out.put(quantity, topic);
            }
        }
        return out;
    }

    /** Whether a topic names this quantity. */
    static boolean names(String quantity) {
        return BY_QUANTITY.containsKey(quantity);
    }
}
