package org.voltdocket.worlds;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingTest;
import org.voltdocket.diagnosis.CrankingTest;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Reading;
import org.voltdocket.diagnosis.Recording;

/** What cases of every world have in common. */
class WorldsTest {

    static List<World> worlds() {
        return World.all();
    }

    @ParameterizedTest
    @MethodSource("worlds")
    void aSeedAlwaysGivesTheSameCase(World world) {
        WorldCase once = CaseMaker.make(world, Fault.BELT_SLIPS, 5);
        WorldCase again = CaseMaker.make(world, Fault.BELT_SLIPS, 5);
        assertThat(new Difference(false).of(once.input(), again.input())).isZero();
        assertThat(again.input().facts()).isEqualTo(once.input().facts());
        assertThat(again.estimates()).isEqualTo(once.estimates());
        WorldCase other = CaseMaker.make(world, Fault.BELT_SLIPS, 6);
        assertThat(other.estimates()).isNotEqualTo(once.estimates());
    }

    @ParameterizedTest
    @MethodSource("worlds")
    void everyFaultGivesEvidenceThatAServerWouldTake(World world) {
        for (Fault fault : Fault.values()) {
            WorldCase one = CaseMaker.make(world, fault, 11);
            assertThat(one.input().evidence()).as(one.toString()).isNotEmpty();
            one.input().evidence().stream().map(Evidence::reading).forEach(r -> assertAccepted(one, r));
        }
    }

    private static void assertAccepted(WorldCase one, Reading reading) {
        if (reading instanceof Recording recording) {
            assertThat(recording.rows()).isGreaterThanOrEqualTo(20);
            double[] times = recording.timeS();
            float[] volts = recording.channel(Channel.MEASURED_V);
            for (int i = 0; i < times.length; i++) {
                assertThat(volts[i]).as("%s row %d", one, i).isBetween(-2f, 40f);
                assertThat(i == 0 || times[i] > times[i - 1]).isTrue();
            }
        } else if (reading instanceof BatteryTest test) {
            assertThat(test.restVoltageV()).as(one.toString()).isBetween(8.0, 14.0);
        } else if (reading instanceof CrankingTest test) {
            assertThat(test.minimumVoltageV()).as(one.toString()).isBetween(0.0, 12.5);
        } else {
            assertThat(((ChargingTest) reading).temperatureC()).isBetween(-40.0, 120.0);
        }
    }

    /** Common practice: a new battery gives its rated cranking current, and starts an engine with 9.6 V or more. */
    @ParameterizedTest
    @MethodSource("worlds")
    void aSoundChargedBatteryPassesItsTests(World world) {
        for (long seed = 1; seed <= 15; seed++) {
            WorldCase one = CaseMaker.make(world, Fault.HEALTHY_CONVENTIONAL, seed);
            for (Evidence item : one.input().evidence()) {
                if (item.reading() instanceof BatteryTest test
                        && test.crankingCurrentA() != null
                        && Boolean.TRUE.equals(test.chargedBefore())) {
                    assertThat(test.crankingCurrentA() / one.setup().ratedA())
                            .as(one.toString())
                            .isBetween(0.8, 1.25);
                }
            }
        }
    }

    @Test
    void aCapacityRunOfASoundBatteryTakesAboutTwentyHours() {
        // EN 50342-1: C20 is what a battery gives in 20 h down to 10.50 V (from memory)
        for (World world : World.all()) {
            Setup setup = Setup.draw(Fault.HEALTHY_CONVENTIONAL, 1, new Chance(1).of(world.name()));
            BatteryModel battery = world.battery(setup, 1, 25);
            double hours = 0;
            while (battery.voltage(-setup.fittedAh() / 20) > 10.5 && hours < 30) {
                battery.step(-setup.fittedAh() / 20, 60);
                hours += 1 / 60.0;
            }
            assertThat(hours).as(world.name()).isBetween(16.5, 21.5);
        }
    }

    @Test
    void aTwinWithoutTheFaultDiffersAndAHealthyTwinDoesNot() {
        World world = World.all().get(0);
        WorldCase dead = CaseMaker.make(world, Fault.SOURCE_DEAD, 4);
        assertThat(new Difference(false)
                        .of(
                                dead.input(),
                                CaseMaker.twin(world, dead, Effects.NONE).input()))
                .isGreaterThan(1);
        WorldCase healthy = CaseMaker.make(world, Fault.HEALTHY_MANAGED, 4);
        assertThat(new Difference(true)
                        .of(
                                healthy.input(),
                                CaseMaker.twin(world, healthy, Effects.NONE).input()))
                .isZero();
    }

    @Test
    void fewerChannelsKeepTheMeasuredVoltage() {
        WorldCase one = CaseMaker.make(World.all().get(2), Fault.DRAIN, 3);
        for (Evidence item : Channels.VOLTAGE.of(one.input()).evidence()) {
            if (item.reading() instanceof Recording recording) {
                assertThat(recording.has(Channel.MEASURED_V)).isTrue();
                assertThat(recording.has(Channel.REPORTED_V)).isFalse();
            }
        }
    }
}
