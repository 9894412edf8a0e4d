package org.voltdocket.casefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Facts.BatteryFacts;
import org.voltdocket.diagnosis.Facts.VehicleFacts;
import org.voltdocket.diagnosis.read.Fact;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Vin;

class FactChangesTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 3, 4);

    private final CaseReference ref = new CaseReference(
            UUID.randomUUID(),
            CaseNumber.parse("V-000-001-6"),
            BatterySerial.parse("KX4-2291-077"),
            Vin.parse("WP0ZZZ99ZTS392124"),
            Optional.empty());

    @Test
    void fillAddsWhatIsUnknownAndKeepsTheRest() {
        Facts filled = FactChanges.fill(ref, facts(70.0, null, null), facts(null, "slow start", null));
        assertThat(filled).isEqualTo(facts(70.0, "slow start", null));
        assertThat(FactChanges.fill(ref, filled, Facts.UNKNOWN)).isEqualTo(filled);
    }

    @Test
    void theUnknownChargingControlConflictsWithNothing() {
        Facts unknown = facts(null, null, ChargingControl.UNKNOWN);
        Facts fixed = facts(null, null, ChargingControl.CONVENTIONAL);
        assertThat(FactChanges.fill(ref, unknown, fixed)).isEqualTo(fixed);
        assertThat(FactChanges.fill(ref, fixed, unknown)).isEqualTo(fixed);
    }

    @Test
    void anotherValueIsAConflictWithBothValues() {
        assertThatThrownBy(() -> FactChanges.fill(ref, facts(70.0, "a", null), facts(60.0, "a", null)))
                .isInstanceOfSatisfying(
                        RequestException.class,
                        refused -> assertThat((List<?>) refused.properties().get("errors"))
                                .singleElement()
                                .isInstanceOfSatisfying(FactConflict.class, one -> {
                                    assertThat(one.field()).isEqualTo("battery.capacityAh");
                                    assertThat(one.known()).isEqualTo(Fact.plain(70.0));
                                    assertThat(one.given()).isEqualTo(Fact.plain(60.0));
                                }));
    }

    @Test
    void aPatchSetsAndRemoves() {
        Map<Fact, Object> patch = new EnumMap<>(Fact.class);
        patch.put(Fact.CAPACITY, 60.0);
        patch.put(Fact.COMPLAINT, null);
        assertThat(FactChanges.patch(facts(70.0, "a", null), patch)).isEqualTo(facts(60.0, null, null));
    }

    @Test
    void theTrailGetsOldAndNewValueOfWhatDiffers() {
        Map<String, Object> changes =
                FactChanges.between(facts(70.0, "a", null), facts(null, "a", ChargingControl.CONVENTIONAL));
        assertThat(changes).containsOnlyKeys("battery.capacityAh", "vehicle.chargingControl");
        assertThat(changes.get("battery.capacityAh"))
                .asInstanceOf(org.assertj.core.api.InstanceOfAssertFactories.MAP)
                .containsEntry("old", Fact.plain(70.0))
                .containsEntry("new", null);
    }

    @Test
    void daysInTheFutureAreRefusedByName() {
        Facts future = new Facts(
                new BatteryFacts(null, null, null, null, TODAY.plusDays(2), null, null, null), null, null, null);
        assertThatThrownBy(() -> FactChanges.refuseImpossible(future, TODAY))
                .isInstanceOfSatisfying(RequestException.class, refused -> {
                    assertThat(refused.code()).isEqualTo(CaseService.INVALID_FACTS);
                    assertThat(refused.field()).isEqualTo("battery.producedOn");
                });
        FactChanges.refuseImpossible(facts(70.0, "a", null), TODAY);
    }

    private static Facts facts(Double capacityAh, String complaint, ChargingControl control) {
        return new Facts(
                new BatteryFacts(null, capacityAh, null, null, null, null, null, null),
                new VehicleFacts(control, null, null, null, null),
                complaint,
                null);
    }
}
