package org.voltdocket.desk.web;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimStepRequest;
import org.voltdocket.claim.service.ClaimStepService;
import org.voltdocket.desk.DeskFilter;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;

/** Takes several claims into review. Each is taken or refused on its own; the answer lists the results with reasons. */
@Controller
class TakePageController {

    private static final int MOST = 200;

    private final ClaimStepService claims;

    TakePageController(ClaimStepService claims) {
        this.claims = claims;
    }

    /**
     * The result for one claim.
     *
     * @param why null where it was taken
     */
    record Taken(String number, boolean taken, String why) implements Serializable {}

    /** @param claim case number and version of each claim, as {@code V-0K3-9TF-R:1} */
    @PostMapping("/desk/take")
    String take(
            Actor actor,
            @RequestParam(defaultValue = "") List<String> claim,
            @RequestParam Map<String, String> given,
            RedirectAttributes flash) {
        if (!ClaimAction.TAKE.isFor(actor.role())) {
            throw new AccessDeniedException("only a clerk takes claims");
        }
        List<Taken> answers = new ArrayList<>();
        claim.stream().distinct().limit(MOST).forEach(one -> answers.add(take(actor, one)));
        flash.addFlashAttribute("taken", answers);
        return "redirect:" + DeskFilter.read(given).with("/desk", "", "");
    }

    private Taken take(Actor actor, String one) {
        String[] parts = one.split(":", 2);
        try {
            OptionalLong version = parts.length == 2 && parts[1].matches("\\d{1,18}")
                    ? OptionalLong.of(Long.parseLong(parts[1]))
                    : OptionalLong.empty();
            claims.act(
                    actor,
                    CaseNumber.parse(parts[0]),
                    new ClaimStepRequest(
                            ClaimAction.TAKE, null, List.of(), List.of(), Optional.empty(), version, Optional.empty()));
            return new Taken(parts[0], true, null);
        } catch (RequestException | IllegalArgumentException unknown) {
            return new Taken(parts[0], false, unknown.getMessage());
        }
    }
}
