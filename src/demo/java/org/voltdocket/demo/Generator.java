package org.voltdocket.demo;

import java.util.Locale;
import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Vin;

/** Generates invented cases: the same scenario and seed give the same bytes. */
public final class Generator {

    private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ0123456789";

    private Generator() {}

    /** One whole case. */
    public static GeneratedCase generate(Scenario scenario, long seed) {
        SeededRandom chance = new SeededRandom(mixed(seed * 64 + scenario.ordinal()));
        CaseDraft draft = new CaseDraft(chance);
        switch (scenario.cause()) {
            case BATTERY_DEFECT, BATTERY_WORN -> BatteryFaults.play(scenario, draft);
            case CHARGING_SOURCE, WIRING -> SupplyFaults.play(scenario, draft);
            case CURRENT_SENSOR, CHARGE_CONTROL -> ControlFaults.play(scenario, draft);
            default -> UseCases.play(scenario, draft);
        }
        Facts facts = draft.facts();
        return new GeneratedCase(scenario, seed, serial(chance, facts), vin(chance), facts, draft.items, draft.truths);
    }

    /** Spreads neighbouring seeds apart (the finaliser of MurmurHash3); else their streams would overlap. */
    private static long mixed(long seed) {
        long z = (seed ^ seed >>> 33) * 0xff51afd7ed558ccdL;
        z = (z ^ z >>> 33) * 0xc4ceb9fe1a85ec53L;
        return z ^ z >>> 33;
    }

    private static BatterySerial serial(SeededRandom chance, Facts facts) {
        String made = facts.battery().producedOn().toString().substring(2, 7).replace("-", "");
        return new BatterySerial(String.format(
                Locale.ROOT, "QX%02.0f-%s-%05d", facts.battery().capacityAh(), made, chance.whole(1, 99_999)));
    }

    /** Valid in form only: no maker has this identifier, and where it stands no check digit binds. */
    private static Vin vin(SeededRandom chance) {
        StringBuilder out = new StringBuilder("XX9");
        for (int i = 0; i < 8; i++) {
            out.append(LETTERS.charAt(chance.whole(0, LETTERS.length() - 1)));
        }
        return new Vin(out + String.format(Locale.ROOT, "%06d", chance.whole(1, 999_999)));
    }
}
