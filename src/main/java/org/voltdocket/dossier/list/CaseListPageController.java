package org.voltdocket.dossier.list;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.search.CasePage;
import org.voltdocket.casefile.search.CaseQuery;
import org.voltdocket.casefile.search.CaseSearch;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** The page with the list of cases: a workshop's own, or all cases for the distributor. Filters are in the address. */
@Controller
class CaseListPageController {

    private static final int PAGE_SIZE = 30;
    private static final String NEWEST = "newest";
    private static final String OLDEST = "oldest";

    private static final List<String> STATES = Stream.concat(
                    Stream.of(CaseListItem.NO_CLAIM),
                    Arrays.stream(ClaimState.values()).map(ClaimState::id))
            .toList();

    private final CaseSearch search;
    private final EvidenceArchive archive;

    CaseListPageController(CaseSearch search, EvidenceArchive archive) {
        this.search = search;
        this.archive = archive;
    }

    @GetMapping("/cases")
    String list(
            Actor actor,
            @RequestParam(defaultValue = "") String q,
            @RequestParam(defaultValue = "") String leaning,
            @RequestParam(defaultValue = "") String cause,
            @RequestParam(defaultValue = "") String verdict,
            @RequestParam(defaultValue = "") String state,
            @RequestParam(defaultValue = NEWEST) String order,
            @RequestParam Optional<String> cursor,
            Model model) {
        CasePage page;
        try {
            page = search.page(
                    actor,
                    new CaseQuery(
                            q,
                            given(leaning).map(Leaning::of),
                            given(cause).map(Cause::of),
                            given(verdict).map(BatteryVerdict::of),
                            given(state).map(CaseListPageController::state),
                            PAGE_SIZE,
                            cursor.filter(c -> !c.isBlank()),
                            order.equals(OLDEST)));
        } catch (IllegalArgumentException wrongFilter) {
            throw RequestException.malformed(wrongFilter.getMessage());
        }
        Map<UUID, Integer> evidence = archive.counts(
                page.cases().stream().map(item -> item.ref().id()).toList());
        model.addAttribute("page", page);
        model.addAttribute("evidence", evidence);
        model.addAttribute("desk", !actor.isWorkshop());
        model.addAttribute("mayOpen", actor.canEditCases());
        model.addAttribute("q", q);
        model.addAttribute("leaning", leaning);
        model.addAttribute("cause", cause);
        model.addAttribute("verdict", verdict);
        model.addAttribute("state", state);
        model.addAttribute("states", STATES);
        model.addAttribute("order", order.equals(OLDEST) ? OLDEST : NEWEST);
        model.addAttribute("orders", List.of(NEWEST, OLDEST));
        model.addAttribute("filtered", !(q + leaning + cause + verdict + state).isBlank());
        model.addAttribute("paged", cursor.isPresent());
        model.addAttribute(
                "leanings", Arrays.stream(Leaning.values()).map(Leaning::id).toList());
        model.addAttribute(
                "causes", Arrays.stream(Cause.values()).map(Cause::id).toList());
        model.addAttribute(
                "verdicts",
                Arrays.stream(BatteryVerdict.values()).map(BatteryVerdict::id).toList());
        return "dossier/list";
    }

    private static String state(String id) {
        return id.equals(CaseListItem.NO_CLAIM) ? id : ClaimState.of(id).id();
    }

    private static Optional<String> given(String text) {
        return Optional.of(text).filter(t -> !t.isBlank());
    }
}
