package org.voltdocket.dossier.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.springframework.http.ContentDisposition;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.bag.CaseBagExporter;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.FreeText;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Vin;
import org.voltdocket.trail.Trail;
import org.voltdocket.ui.PdfResponse;
import tools.jackson.databind.json.JsonMapper;

/**
 * Everything that is stored about a vehicle: a ZIP with {@code vehicle.json}, which lists all cases as the API returns them, and
 * the bag of each case. For administrators, who state a reason; the trail of each case records it.
 */
@Controller
class VehicleExportController {

    private final CaseService cases;
    private final CaseBags bags;
    private final CaseResponseWriter answers;
    private final Trail trail;
    private final JsonMapper json;
    private final Clock clock;

    VehicleExportController(
            CaseService cases, CaseBags bags, CaseResponseWriter answers, Trail trail, JsonMapper json, Clock clock) {
        this.cases = cases;
        this.bags = bags;
        this.answers = answers;
        this.trail = trail;
        this.json = json;
        this.clock = clock;
    }

    @PostMapping("/privacy/export")
    void export(
            Actor actor,
            @RequestParam(defaultValue = "") String vin,
            @RequestParam(defaultValue = "") String reason,
            HttpServletResponse response)
            throws IOException {
        if (!actor.canAdminister()) {
            throw new AccessDeniedException("only an administrator exports the data of a vehicle");
        }
        String why = FreeText.required("erasure-refused", "reason", reason, "says why");
        Vin key = vin(vin);
        List<Dossier> dossiers = new ArrayList<>();
        for (var one : cases.ofVehicle(actor, key)) {
            dossiers.add(bags.check(actor, one.ref().number()));
        }
        for (Dossier dossier : dossiers) {
            trail.record(
                    actor, "vehicle-exported", dossier.file().ref().number().value(), Map.of("reason", why));
        }
        PdfResponse.head(response, "application/zip", ContentDisposition.attachment(), "vehicle.zip");
        ZipOutputStream zip = new ZipOutputStream(response.getOutputStream(), StandardCharsets.UTF_8);
        zip.putNextEntry(new ZipEntry("vehicle.json"));
        zip.write(json(key, dossiers));
        zip.closeEntry();
        for (Dossier dossier : dossiers) {
            zip.putNextEntry(new ZipEntry(CaseBagExporter.name(dossier) + ".zip"));
            bags.write(actor, dossier, zip);
            zip.closeEntry();
        }
        zip.finish();
    }

    private byte[] json(Vin vin, List<Dossier> dossiers) {
        Map<String, Object> vehicle = new LinkedHashMap<>();
        vehicle.put("vin", vin.value());
        vehicle.put("exportedAt", clock.instant().toString());
        vehicle.put(
                "cases",
                dossiers.stream()
                        .map(dossier -> json.readTree(answers.body(dossier, null)))
                        .toList());
        return json.writeValueAsBytes(vehicle);
    }

    private static Vin vin(String text) {
        try {
            return Vin.parse(text);
        } catch (IllegalArgumentException e) {
            throw RequestException.invalid("erasure-refused", "vin", "'vin' is no VIN: " + e.getMessage());
        }
    }
}
