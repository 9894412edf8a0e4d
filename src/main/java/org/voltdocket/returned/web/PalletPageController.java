package org.voltdocket.returned.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.LocalDate;
import java.util.Map;
import java.util.UUID;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.returned.ReturnErrors;
import org.voltdocket.returned.pallet.Pallet;
import org.voltdocket.returned.pallet.PalletDeliveryNote;
import org.voltdocket.returned.pallet.PalletService;

/** Pages of pallets: their lists and the batteries scanned so far. */
@Controller
@RequestMapping("/returns/pallets")
class PalletPageController {

    private static final long MOST_BYTES = 1 << 20;

    private final PalletService pallets;
    private final Clock clock;

    PalletPageController(PalletService pallets, Clock clock) {
        this.pallets = pallets;
        this.clock = clock;
    }

    @GetMapping
    String list(Actor actor, Model model) {
        model.addAttribute("pallets", pallets.all(actor));
        model.addAttribute("today", today());
        if (!model.containsAttribute("given")) {
            model.addAttribute("given", Map.of());
        }
        return "returned/pallets";
    }

    @PostMapping
    String note(
            Actor actor,
            @RequestParam Map<String, String> given,
            @RequestParam(name = "file", required = false) MultipartFile file,
            Model model,
            RedirectAttributes flash,
            HttpServletResponse response)
            throws IOException {
        model.addAttribute("given", given);
        try {
            String list = file == null || file.isEmpty() ? given.get("list") : text(file);
            Pallet pallet = pallets.note(
                    actor,
                    PalletDeliveryNote.parse(
                            given.get("number"), given.get("sender"), given.get("arrivedOn"), list, today()));
            flash.addFlashAttribute("notice", "pallet.notice");
            return "redirect:/returns/pallets/" + pallet.id();
        } catch (RequestException refused) {
            if (refused.errors().isEmpty()) {
                model.addAttribute("conflict", refused.getMessage());
            } else {
                model.addAttribute("errors", refused.errors());
            }
            response.setStatus(refused.status());
        }
        return list(actor, model);
    }

    private static String text(MultipartFile file) throws IOException {
        if (file.getSize() > MOST_BYTES) {
            throw ReturnErrors.invalid("list", "the list is longer than 1 MiB; a pallet lists 5000 batteries at most");
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(file.getBytes()))
                    .toString();
        } catch (CharacterCodingException e) {
            throw ReturnErrors.invalid("list", "the list is not UTF-8 text; save it as CSV or plain text");
        }
    }

    @GetMapping("/{pallet}")
    String show(Actor actor, @PathVariable UUID pallet, Model model) {
        Pallet.Details whole = pallets.whole(actor, pallet);
        model.addAttribute("p", whole.pallet());
        model.addAttribute("lines", whole.lines());
        return "returned/pallet";
    }

    private LocalDate today() {
        return LocalDate.ofInstant(clock.instant(), clock.getZone());
    }
}
