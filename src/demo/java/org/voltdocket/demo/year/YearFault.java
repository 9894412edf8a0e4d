package org.voltdocket.demo.year;

import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.demo.model.ModelSettings;
import org.voltdocket.demo.model.ModelSettings.SourceFault;

/** A true fault and its frequency. */
enum YearFault {
    DEFECT(6),
    WORN(9),
    SOURCE(14),
    SENSOR(14),
    WIRING(8),
    DRAIN(17),
    SHORT_TRIPS(20),
    NOTHING(12);

    private final int often;

    YearFault(int often) {
        this.often = often;
    }

    static YearFault draw(SeededRandom chance) {
        int all = 0;
        for (YearFault one : values()) {
            all += one.often;
        }
        int at = chance.whole(1, all);
        for (YearFault one : values()) {
            at -= one.often;
            if (at <= 0) {
                return one;
            }
        }
        throw new IllegalStateException("the shares are wrong");
    }

    /** Whether the battery itself is at fault. */
    boolean ofBattery() {
        return this == DEFECT || this == WORN;
    }

    void into(ModelSettings setup, SeededRandom chance) {
        switch (this) {
            case DEFECT -> {
                setup.missingCellV = chance.between(1.85, 2.15);
                setup.charge = chance.between(0.5, 0.8);
            }
            case WORN -> {
                setup.resistanceFactor = chance.between(1.9, 2.8);
                setup.capacityLeft = chance.between(0.35, 0.55);
                setup.charge = chance.between(0.5, 0.8);
            }
            case SOURCE -> {
                setup.sourceFault = chance.odds(0.6) ? SourceFault.DEAD : SourceFault.WEAK;
                setup.sourceLevel = chance.between(0.14, 0.3);
                setup.charge = chance.between(0.2, 0.5);
            }
            case WIRING -> {
                setup.cableOhm = chance.between(0.03, 0.07);
                setup.loadsAtSource = 0.1;
                setup.charge = chance.between(0.3, 0.6);
            }
            case NOTHING -> setup.charge = chance.between(0.82, 0.97);
            default -> setup.charge = chance.between(0.2, 0.6);
        }
    }
}
