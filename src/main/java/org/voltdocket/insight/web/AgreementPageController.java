package org.voltdocket.insight.web;

import de.siegmar.fastcsv.writer.CsvWriter;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.insight.TestAgreementService;
import org.voltdocket.insight.TestAgreementService.Instrument;
import org.voltdocket.insight.TestAgreementService.Pair;
import org.voltdocket.insight.chart.BlandAltmanChart;
import org.voltdocket.insight.chart.Drawing;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.ui.SpreadsheetCells;
import org.voltdocket.ui.TextFormatter;

/** The page on agreement of workshops and bench: kappa of the categories, and a chart per instrument. */
@Controller
class AgreementPageController {

    private final TestAgreementService agreement;
    private final TextFormatter words;

    AgreementPageController(TestAgreementService agreement, TextFormatter words) {
        this.agreement = agreement;
        this.words = words;
    }

    @GetMapping("/insight/agreement")
    String show(Actor actor, @RequestParam(defaultValue = "") String instrument, Model model) {
        List<Instrument> instruments = agreement.instruments(actor);
        model.addAttribute("judgements", agreement.judgements(actor));
        model.addAttribute("categories", TestAgreementService.CATEGORIES);
        model.addAttribute("instruments", instruments);
        model.addAttribute("shown", find(instruments, instrument).orElse(null));
        return "insight/agreement";
    }

    /** The requested instrument, or the first, which has the largest bias. */
    private static Optional<Instrument> find(List<Instrument> instruments, String serial) {
        return instruments.stream()
                .filter(one -> serial.isBlank() || one.serial().equals(serial))
                .findFirst();
    }

    @GetMapping("/insight/agreement.png")
    ResponseEntity<byte[]> picture(
            Actor actor,
            @RequestParam(defaultValue = "") String instrument,
            @RequestParam(defaultValue = "860") int width) {
        Instrument found = agreement.instruments(actor).stream()
                .filter(one -> one.serial().equals(instrument))
                .findFirst()
                .orElseThrow(() -> RequestException.notFound("instrument '" + instrument + "'"));
        Drawing drawing = BlandAltmanChart.of(
                found.pairs().stream()
                        .map(pair -> new BlandAltmanChart.Point(pair.mean(), pair.differencePct()))
                        .toList(),
                found.limits().orElse(null),
                new BlandAltmanChart.Names(
                        words.say("agreement.across"),
                        words.say("agreement.up"),
                        words.say("agreement.bias"),
                        words.say("agreement.lower"),
                        words.say("agreement.upper")));
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_PNG)
                .cacheControl(CacheControl.noCache().cachePrivate())
                .body(drawing.png(width));
    }

    @GetMapping("/insight/agreement.csv")
    void table(Actor actor, HttpServletResponse response) throws IOException {
        List<Instrument> instruments = agreement.instruments(actor);
        response.setContentType("text/csv;charset=UTF-8");
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.attachment()
                        .filename("agreement.csv")
                        .build()
                        .toString());
        try (CsvWriter csv =
                CsvWriter.builder().build(new OutputStreamWriter(response.getOutputStream(), StandardCharsets.UTF_8))) {
            csv.writeRecord("instrument", "case", "workshop", "workshop_a", "bench_a", "difference_pct");
            for (Instrument one : instruments) {
                for (Pair pair : one.pairs()) {
                    csv.writeRecord(
                            SpreadsheetCells.harmless(pair.instrument()),
                            pair.caseNumber(),
                            SpreadsheetCells.harmless(pair.workshop()),
                            Double.toString(pair.workshopA()),
                            Double.toString(pair.benchA()),
                            Double.toString(pair.differencePct()));
                }
            }
        }
    }
}
