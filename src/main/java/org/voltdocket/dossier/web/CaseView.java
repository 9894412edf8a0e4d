package org.voltdocket.dossier.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonRawValue;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import org.voltdocket.assessment.AssessmentView;
import org.voltdocket.assessment.StoredAssessment;
import org.voltdocket.assessment.web.EvidenceView;
import org.voltdocket.casefile.AssessmentSummary;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.RelatedCases;
import org.voltdocket.casefile.web.FactViews;
import org.voltdocket.claim.view.ClaimView;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.kernel.Vin;

/** A case as the API returns it. */
@Schema(name = "Case")
@JsonInclude(JsonInclude.Include.NON_NULL)
@JsonPropertyOrder({
    "number",
    "batterySerial",
    "vin",
    "vinCheck",
    "modelYear",
    "battery",
    "vehicle",
    "complaint",
    "batteriesReplacedBefore",
    "openedAt",
    "openedBy",
    "workshops",
    "ignored",
    "history",
    "evidence",
    "claim",
    "assessment",
    "assessmentPendingSince",
    "assessmentFailure"
})
record CaseView(
        @Schema(example = "V-0K3-9TF-R") String number,
        String batterySerial,
        String vin,
        VinCheck vinCheck,

        @Schema(description = "from the VIN, where it says so")
        Integer modelYear,

        FactViews.Battery battery,
        FactViews.Vehicle vehicle,
        String complaint,
        Integer batteriesReplacedBefore,
        Instant openedAt,
        String openedBy,
        List<Workshop> workshops,

        @Schema(description = "unknown members of the request")
        List<String> ignored,

        History history,
        List<EvidenceView> evidence,

        @Schema(nullable = true, description = "the latest that you may see; null until the workshop claims")
        @JsonInclude(JsonInclude.Include.ALWAYS)
        ClaimView claim,

        @Schema(
                implementation = AssessmentView.class,
                description = "the latest, exactly as stored; null until the first")
        @JsonRawValue
        @JsonInclude(JsonInclude.Include.ALWAYS)
        String assessment,

        @Schema(
                description =
                        "a change is stored that the assessment does not cover yet; absent where it covers everything")
        Instant assessmentPendingSince,

        @Schema(description = "the last change could not be assessed; it is kept, and tried again")
        Failure assessmentFailure) {

    /** The check digit (49 CFR 565.15): whether it fits, and whether it must. */
    record VinCheck(boolean fits, boolean binds) {}

    record Workshop(String id, String name) {}

    record Failure(Instant failedAt, String reason) {}

    /** Other cases of the same vehicle or battery. */
    record History(
            List<Relative> batteriesInVehicle,

            @Schema(description = "number of further ones that you may not see")
            int batteriesInVehicleElsewhere,

            List<Relative> vehiclesOfBattery,

            @Schema(description = "number of further ones that you may not see")
            int vehiclesOfBatteryElsewhere) {

        static History of(RelatedCases relatives) {
            return new History(
                    relatives.sameVehicle().stream().map(Relative::battery).toList(),
                    relatives.sameVehicleElsewhere(),
                    relatives.sameBattery().stream().map(Relative::vehicle).toList(),
                    relatives.sameBatteryElsewhere());
        }
    }

    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Relative(String number, String batterySerial, String vin, Instant openedAt, String leaning) {

        static Relative battery(CaseListItem line) {
            return new Relative(
                    line.ref().number().value(), line.ref().serial().value(), null, line.openedAt(), leaning(line));
        }

        static Relative vehicle(CaseListItem line) {
            return new Relative(
                    line.ref().number().value(), null, line.ref().vin().value(), line.openedAt(), leaning(line));
        }

        private static String leaning(CaseListItem line) {
            return line.standing()
                    .map(AssessmentSummary::leaning)
                    .map(leaning -> leaning.id())
                    .orElse(null);
        }
    }

    static CaseView of(Dossier dossier, List<String> ignored) {
        CaseFacts file = dossier.file();
        Facts facts = file.facts();
        Vin vin = file.ref().vin();
        String number = file.ref().number().value();
        return new CaseView(
                number,
                file.ref().serial().value(),
                vin.value(),
                new VinCheck(vin.checkDigitFits(), vin.checkDigitBinds()),
                vin.modelYear().isPresent() ? vin.modelYear().getAsInt() : null,
                FactViews.Battery.of(facts.battery()),
                FactViews.Vehicle.of(facts.vehicle()),
                facts.complaint(),
                facts.batteriesReplacedBefore(),
                file.openedAt(),
                file.openedBy(),
                dossier.workshopNames().entrySet().stream()
                        .map(e -> new Workshop(e.getKey().toString(), e.getValue()))
                        .toList(),
                ignored,
                History.of(dossier.relatives()),
                dossier.evidence().stream()
                        .map(item -> EvidenceView.of(number, item, dossier.findingsOf(item), dossier.regimesOf(item)))
                        .toList(),
                dossier.claim()
                        .map(claim -> ClaimView.of(file.ref().number(), claim, dossier.basisChange()))
                        .orElse(null),
                dossier.assessment().map(StoredAssessment::body).orElse(null),
                dossier.pendingSince().orElse(null),
                dossier.failure()
                        .map(failure -> new Failure(failure.failedAt(), failure.reason()))
                        .orElse(null));
    }
}
