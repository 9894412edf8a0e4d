package org.voltdocket.returned.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.paper.LabelSize;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.pallet.Pallet;
import org.voltdocket.returned.pallet.PalletService;
import org.voltdocket.returned.service.ReturnService;

/** Labels of one battery, or of all registered batteries of a pallet. */
@Controller
class LabelDocumentsController {

    private final ReturnService returns;
    private final PalletService pallets;
    private final ReturnLabelFactory labels;

    LabelDocumentsController(ReturnService returns, PalletService pallets, ReturnLabelFactory labels) {
        this.returns = returns;
        this.pallets = pallets;
        this.labels = labels;
    }

    /**
     * @param width mm; absent for the configured size
     * @param height mm; absent for the configured size
     * @param on {@code sheet} to fill sheets of A4
     */
    @GetMapping("/returns/{returned}/label.pdf")
    void one(
            Actor actor,
            @PathVariable UUID returned,
            @RequestParam Optional<Float> width,
            @RequestParam Optional<Float> height,
            @RequestParam(defaultValue = "roll") String on,
            HttpServletResponse response)
            throws IOException {
        ReturnedBattery battery = returns.of(actor, returned);
        send(response, battery.number(), List.of(battery), size(width, height), on.equals("sheet"));
    }

    @GetMapping("/returns/pallets/{pallet}/labels.pdf")
    void ofPallet(
            Actor actor,
            @PathVariable UUID pallet,
            @RequestParam Optional<Float> width,
            @RequestParam Optional<Float> height,
            @RequestParam(defaultValue = "sheet") String on,
            HttpServletResponse response)
            throws IOException {
        Pallet.Details whole = pallets.whole(actor, pallet);
        List<ReturnedBattery> batteries = whole.lines().stream()
                .filter(line -> line.battery() != null)
                .map(line -> returns.of(actor, line.battery().id()))
                .toList();
        if (batteries.isEmpty()) {
            throw ReturnErrors.nothingToPrint(whole.pallet().number());
        }
        send(
                response,
                "pallet-" + whole.pallet().number().replace('/', '-'),
                batteries,
                size(width, height),
                on.equals("sheet"));
    }

    private LabelSize size(Optional<Float> width, Optional<Float> height) {
        try {
            LabelSize usual = labels.usual();
            return new LabelSize(width.orElse(usual.widthMm()), height.orElse(usual.heightMm()));
        } catch (IllegalArgumentException e) {
            throw RequestException.malformed(e.getMessage());
        }
    }

    private void send(
            HttpServletResponse response, String name, List<ReturnedBattery> batteries, LabelSize size, boolean sheet)
            throws IOException {
        byte[] pdf = labels.print(batteries, size, sheet);
        response.setContentType(MediaType.APPLICATION_PDF_VALUE);
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader(HttpHeaders.CACHE_CONTROL, "private, no-cache");
        response.setHeader(
                HttpHeaders.CONTENT_DISPOSITION,
                ContentDisposition.inline().filename(name + ".pdf").build().toString());
        response.setContentLength(pdf.length);
        response.getOutputStream().write(pdf);
    }
}
