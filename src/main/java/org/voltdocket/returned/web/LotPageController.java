package org.voltdocket.returned.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.lot.Lot;
import org.voltdocket.returned.lot.LotService;
import org.voltdocket.returned.sampling.InspectionLevel;
import org.voltdocket.returned.sampling.RandomDraw;
import org.voltdocket.returned.sampling.SamplingPlanTable;
import org.voltdocket.ui.SpreadsheetCells;

/** Pages of lots, their random samples and results. */
@Controller
@RequestMapping("/returns/lots")
class LotPageController {

    private final LotService lots;

    LotPageController(LotService lots) {
        this.lots = lots;
    }

    @GetMapping
    String list(Actor actor, Model model) {
        model.addAttribute("sources", lots.sources(actor));
        model.addAttribute("lots", lots.all(actor));
        model.addAttribute("levels", InspectionLevel.values());
        model.addAttribute("aqls", SamplingPlanTable.AQLS);
        return "returned/lots";
    }

    /** @param source scope and key with a colon between */
    @PostMapping
    String draw(
            Actor actor,
            @RequestParam(defaultValue = "") String source,
            @RequestParam(defaultValue = "II") String level,
            @RequestParam(defaultValue = "2.5") String aql,
            @RequestParam(defaultValue = "false") boolean reduced,
            Model model,
            HttpServletResponse response) {
        try {
            String[] parts = source.split(":", 2);
            Lot.Request wish = new Lot.Request(
                    Lot.Scope.of(parts[0]), parts.length == 2 ? parts[1] : "", level(level), aql(aql), reduced);
            return "redirect:/returns/lots/" + lots.draw(actor, wish).id();
        } catch (RequestException refused) {
            model.addAttribute("refused", refused.getMessage());
            response.setStatus(refused.status());
        }
        return list(actor, model);
    }

    private static InspectionLevel level(String text) {
        try {
            return InspectionLevel.valueOf(text);
        } catch (IllegalArgumentException e) {
            throw ReturnErrors.invalid("level", "'level' is I, II or III; read '" + text + "'");
        }
    }

    private static double aql(String text) {
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            throw ReturnErrors.invalid(
                    "aql", "'aql' is one of " + SamplingPlanTable.AQLS + " per cent; read '" + text + "'");
        }
    }

    @GetMapping("/{lot}")
    String show(Actor actor, @PathVariable UUID lot, Model model) {
        Lot.Details whole = lots.whole(actor, lot);
        model.addAttribute("lot", whole.lot());
        model.addAttribute("order", whole.order());
        model.addAttribute("oc", OperatingCharacteristicChart.of(whole.lot()));
        return "returned/lot";
    }

    /** The draw as CSV, so that it can be repeated. */
    @GetMapping("/{lot}/draw.csv")
    void draw(Actor actor, @PathVariable UUID lot, HttpServletResponse response) throws IOException {
        Lot.Details whole = lots.whole(actor, lot);
        response.setContentType("text/csv;charset=UTF-8");
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment()
                        .filename(whole.lot().number() + "-draw.csv")
                        .build()
                        .toString());
        try (CsvWriter csv =
                CsvWriter.builder().build(new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8))) {
            csv.writeRecord("rank", "number", "batterySerial", "ticketSha256", "inSample", "outcome");
            for (Lot.Ranked one : whole.order()) {
                csv.writeRecord(
                        Integer.toString(one.rank()),
                        SpreadsheetCells.harmless(one.battery().number()),
                        SpreadsheetCells.harmless(one.battery().serial().value()),
                        RandomDraw.ticket(whole.lot().seed(), one.battery().number()),
                        Boolean.toString(one.inSample()),
                        one.battery().outcome().map(BenchOutcome::id).orElse(""));
            }
        }
    }
}
