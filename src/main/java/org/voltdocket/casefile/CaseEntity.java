package org.voltdocket.casefile;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Vin;

/** Row of {@code case_file}. Rows are born by SQL, for two may open the same pair at once; see {@link CaseService}. */
@Entity
@Table(name = "case_file")
class CaseEntity {

    @Id
    private UUID id;

    @Column(updatable = false)
    private String number;

    @Column(updatable = false)
    private String batterySerial;

    @Column(updatable = false)
    private String vin;

    @Column(updatable = false)
    private Instant openedAt;

    @Column(updatable = false)
    private String openedBy;

    @Column(updatable = false)
    private UUID openedWorkshop;

    /** When the personal data was erased; null for all other cases. */
    @Column(updatable = false)
    private Instant erasedAt;

    private String chemistry;
    private Double capacityAh;

    @Column(name = "rated_cranking_a")
    private Double ratedCrankingA;

    private String crankingStandard;
    private LocalDate producedOn;
    private LocalDate soldOn;
    private LocalDate fittedOn;
    private Double fittedOdometerKm;
    private String chargingControl;
    private Boolean stopStart;
    private String requiredChemistry;
    private Double requiredCapacityAh;
    private Double odometerKm;
    private String complaint;
    private Integer replacedBefore;

    @Version
    private long version;

    // the standing is written by SQL alone, so that saving facts never writes an old one back
    @Column(insertable = false, updatable = false)
    private String leaning;

    @Column(insertable = false, updatable = false)
    private String batteryVerdict;

    @Column(insertable = false, updatable = false)
    private String firstCause;

    @Column(insertable = false, updatable = false)
    private Double probability;

    @Column(insertable = false, updatable = false)
    private Instant assessedAt;

    @Column(insertable = false, updatable = false)
    private String claimState;

    protected CaseEntity() {}

    boolean isErased() {
        return erasedAt != null;
    }

    CaseReference ref() {
        return new CaseReference(
                id,
                new CaseNumber(number),
                new BatterySerial(batterySerial),
                new Vin(vin),
                Optional.ofNullable(openedWorkshop));
    }

    UUID id() {
        return id;
    }

    Instant openedAt() {
        return openedAt;
    }

    String openedBy() {
        return openedBy;
    }

    long version() {
        return version;
    }

    CaseListItem line() {
        return new CaseListItem(ref(), openedAt, standing(), claimState);
    }

    Optional<AssessmentSummary> standing() {
        return leaning == null
                ? Optional.empty()
                : Optional.of(new AssessmentSummary(
                        Leaning.of(leaning),
                        BatteryVerdict.of(batteryVerdict),
                        Cause.of(firstCause),
                        probability,
                        assessedAt));
    }

    Facts facts() {
        return new Facts(
                new Facts.BatteryFacts(
                        chemistry == null ? null : Chemistry.of(chemistry),
                        capacityAh,
                        ratedCrankingA,
                        crankingStandard == null ? null : CrankingStandard.of(crankingStandard),
                        producedOn,
                        soldOn,
                        fittedOn,
                        fittedOdometerKm),
                new Facts.VehicleFacts(
                        chargingControl == null ? null : ChargingControl.of(chargingControl),
                        stopStart,
                        requiredChemistry == null ? null : Chemistry.of(requiredChemistry),
                        requiredCapacityAh,
                        odometerKm),
                complaint,
                replacedBefore);
    }

    /** Replaces the facts. Hibernate counts the version when it writes the row. */
    void change(Facts facts) {
        Facts.BatteryFacts battery = facts.battery();
        chemistry = battery.chemistry() == null ? null : battery.chemistry().id();
        capacityAh = battery.capacityAh();
        ratedCrankingA = battery.ratedCrankingA();
        crankingStandard = battery.crankingStandard() == null
                ? null
                : battery.crankingStandard().id();
        producedOn = battery.producedOn();
        soldOn = battery.soldOn();
        fittedOn = battery.fittedOn();
        fittedOdometerKm = battery.fittedOdometerKm();
        Facts.VehicleFacts vehicle = facts.vehicle();
        chargingControl = vehicle.chargingControl() == null
                ? null
                : vehicle.chargingControl().id();
        stopStart = vehicle.stopStart();
        requiredChemistry = vehicle.requiredChemistry() == null
                ? null
                : vehicle.requiredChemistry().id();
        requiredCapacityAh = vehicle.requiredCapacityAh();
        odometerKm = vehicle.odometerKm();
        complaint = facts.complaint();
        replacedBefore = facts.batteriesReplacedBefore();
    }
}
