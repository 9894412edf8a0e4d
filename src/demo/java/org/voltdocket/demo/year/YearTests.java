package org.voltdocket.demo.year;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.voltdocket.demo.TestFile;
import org.voltdocket.demo.model.SeededRandom;
import org.voltdocket.demo.model.ModelSettings;
import org.voltdocket.demo.model.Workshop;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.CrankingStandard;

/** Generates the test records of a planned case with the demo's vehicle model. */
final class YearTests {

    /** The bench's own tester. */
    static final String BENCH_INSTRUMENT = "BT-0001";

    private static final LocalDate CALIBRATED = LocalDate.of(2025, 6, 2);

    private YearTests() {}

    /** A file as it is sent. */
    record Sent(String name, byte[] content) {}

    /** What the workshop sends with its claim. */
    static List<Sent> ofWorkshop(YearCase one) {
        SeededRandom chance = new SeededRandom(one.seed());
        ModelSettings setup = setup(one, chance);
        Workshop shop =
                new Workshop(setup, chance.split(), instrument(one.garage().instrument()));
        OffsetDateTime at = one.claimedAt().atOffset(ZoneOffset.UTC).minusDays(2);
        List<Sent> sent = new ArrayList<>();
        BatteryTest came = shop.battery(
                at,
                setup.charge,
                0,
                chance.between(2, 14),
                false,
                setup.temperatureC,
                one.make().ratedA(),
                CrankingStandard.EN);
        sent.add(new Sent("as-it-came.json", TestFile.json(read(came, one.garage()))));
        if (!one.garage().tests()) {
            return sent;
        }
        if (chance.odds(0.75)) {
            double commanded = YearPlan.managed(one.make()) ? 14.4 : 14.2;
            sent.add(new Sent(
                    "charging.json",
                    TestFile.json(shop.charging(
                            at.plusHours(1),
                            setup.charge,
                            setup.temperatureC + 4,
                            commanded,
                            14.2,
                            chance.odds(0.5)))));
        }
        if (chance.odds(0.9)) {
            BatteryTest full = shop.battery(
                    at.plusHours(30),
                    chance.between(0.95, 1),
                    0.02,
                    chance.between(12, 24),
                    true,
                    Math.max(8, setup.temperatureC),
                    one.make().ratedA(),
                    CrankingStandard.EN);
            sent.add(new Sent("after-charging.json", TestFile.json(read(full, one.garage()))));
        }
        return sent;
    }

    /** What the bench finds, charged and rested. */
    static Sent ofBench(YearCase one, Instant at) {
        SeededRandom chance = new SeededRandom(one.seed() ^ 0x5eed);
        ModelSettings setup = setup(one, new SeededRandom(one.seed()));
        BatteryTest test = new Workshop(setup, chance, instrument(BENCH_INSTRUMENT))
                .battery(
                        at.atOffset(ZoneOffset.UTC),
                        chance.between(0.98, 1),
                        0.005,
                        25,
                        true,
                        chance.between(20, 24),
                        one.make().ratedA(),
                        CrankingStandard.EN);
        return new Sent("bench.json", TestFile.json(test));
    }

    private static ModelSettings setup(YearCase one, SeededRandom chance) {
        ModelSettings setup = new ModelSettings();
        setup.chemistry = one.make().chemistry();
        setup.capacityAh = one.make().capacityAh();
        setup.managed = YearPlan.managed(one.make());
        setup.regulatedV = 14.2;
        setup.starterA = 2 * one.make().capacityAh() + 20;
        setup.resistanceFactor = chance.between(0.93, 1.08);
        setup.capacityLeft = chance.between(0.93, 1.03);
        int day = one.claimedAt().atOffset(ZoneOffset.UTC).getDayOfYear();
        double season = 10 - 9 * StrictMath.cos(2 * Math.PI * (day - 13) / 365.0);
        setup.temperatureC = Math.round(Math.max(-5, Math.min(28, season + chance.normal(3))));
        one.trouble().into(setup, chance);
        return setup;
    }

    private static BatteryTest read(BatteryTest test, YearWorkshop garage) {
        return new BatteryTest(
                test.takenAt(),
                test.restVoltageV(),
                test.temperatureC(),
                (double) Math.round(test.crankingCurrentA() * garage.reads() / 5) * 5,
                test.crankingStandard(),
                test.internalResistanceMilliohm(),
                test.hoursSinceEngineStop(),
                test.chargedBefore(),
                test.instrument());
    }

    private static BatteryTest.Instrument instrument(String serial) {
        return new BatteryTest.Instrument(serial, CALIBRATED);
    }
}
