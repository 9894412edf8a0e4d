package org.voltdocket.desk.web;

import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.desk.DeskFilter;
import org.voltdocket.desk.DeskItem;
import org.voltdocket.desk.DeskOrder;
import org.voltdocket.desk.DeskService;
import org.voltdocket.desk.SavedFilters;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.notice.NoticeService;

/** The queue of claims. What it shows stands in its address, so that it can be kept, sent and gone back to. */
@Controller
class DeskPageController {

    /** How the claims of each state are offered: the open ones together first, all at the end. */
    private static final List<String> STATES = Stream.of(
                    Stream.of(DeskFilter.OPEN),
                    Arrays.stream(ClaimState.values()).map(ClaimState::id),
                    Stream.of(DeskFilter.ALL))
            .flatMap(states -> states)
            .toList();

    /** What the fields are called on the page, by their names in the address. */
    private static final Map<String, String> LABELS = Map.of(
            "q", "list.search",
            "least", "desk.least",
            "workshop", "desk.workshop",
            "age", "desk.age.least",
            "from", "desk.from",
            "to", "desk.to");

    private final DeskService desk;
    private final SavedFilters saved;
    private final DeskLines lines;
    private final DeskCsv csv;
    private final NoticeService notices;

    DeskPageController(DeskService desk, SavedFilters saved, DeskLines lines, DeskCsv csv, NoticeService notices) {
        this.notices = notices;
        this.desk = desk;
        this.saved = saved;
        this.lines = lines;
        this.csv = csv;
    }

    @GetMapping("/desk")
    String show(Actor actor, @RequestParam Map<String, String> given, Model model, HttpServletResponse response) {
        DeskFilter filter;
        DeskService.Found found;
        try {
            filter = DeskFilter.read(given);
            found = desk.page(
                    actor, filter, Optional.ofNullable(given.get("cursor")).filter(text -> !text.isBlank()));
        } catch (RequestException refused) {
            response.setStatus(HttpServletResponse.SC_BAD_REQUEST);
            model.addAttribute("refused", refused.getMessage());
            model.addAttribute("refusedField", refused.field());
            model.addAttribute("refusedLabel", LABELS.get(refused.field()));
            filter = DeskFilter.read(Map.of());
            found = new DeskService.Found(List.of(), Optional.empty());
        }
        model.addAttribute("f", filter);
        model.addAttribute("given", given);
        List<DeskLines.Shown> shown = lines.of(found.lines());
        model.addAttribute("lines", shown);
        model.addAttribute("takeable", shown.stream().anyMatch(DeskLines.Shown::takeable));
        model.addAttribute(
                "toLookAt",
                notices.openCounts(
                        actor, found.lines().stream().map(DeskItem::number).toList()));
        model.addAttribute("next", found.next().orElse(null));
        model.addAttribute("paged", given.containsKey("cursor"));
        Map<String, Map<String, Long>> counts = desk.counts(actor);
        model.addAttribute("tabs", tabs(counts, filter));
        model.addAttribute("leaningTabs", leanings(counts, filter));
        model.addAttribute("objections", desk.objections(actor));
        model.addAttribute("saved", saved.of(actor));
        model.addAttribute(
                "causes", Arrays.stream(Cause.values()).map(Cause::id).toList());
        model.addAttribute(
                "orders", Arrays.stream(DeskOrder.values()).map(DeskOrder::id).toList());
        model.addAttribute("mine", actor.isWorkshop());
        model.addAttribute("mayTake", actor.canDecideClaims());
        return "desk/desk";
    }

    @GetMapping("/desk/claims.csv")
    void export(Actor actor, @RequestParam Map<String, String> given, HttpServletResponse response) throws IOException {
        DeskFilter filter = DeskFilter.read(given);
        desk.check(filter);
        csv.write(actor, filter, response);
    }

    @PostMapping("/desk/filters")
    String save(Actor actor, @RequestParam Map<String, String> given, RedirectAttributes flash) {
        DeskFilter filter = DeskFilter.read(given);
        try {
            saved.save(actor, given.get("name"), filter);
            flash.addFlashAttribute("notice", "desk.saved.done");
        } catch (RequestException refused) {
            flash.addFlashAttribute("refused", refused.getMessage());
        }
        return "redirect:" + filter.with("/desk", "", "");
    }

    @PostMapping("/desk/filters/delete")
    String delete(Actor actor, @RequestParam String name, RedirectAttributes flash) {
        saved.delete(actor, name);
        flash.addFlashAttribute("notice", "desk.saved.deleted");
        return "redirect:/desk";
    }

    /**
     * A choice with how many claims it has.
     *
     * @param count null where it is not told
     */
    record Tab(String id, String address, Long count, boolean here) {}

    private static List<Tab> tabs(Map<String, Map<String, Long>> counts, DeskFilter filter) {
        return STATES.stream()
                .map(state -> new Tab(
                        state,
                        filter.with("/desk", "state", state.equals(DeskFilter.OPEN) ? "" : state),
                        within(counts, state).values().stream()
                                .mapToLong(n -> n)
                                .sum(),
                        state.equals(filter.state())))
                .toList();
    }

    private static List<Tab> leanings(Map<String, Map<String, Long>> counts, DeskFilter filter) {
        Map<String, Long> within = within(counts, filter.state());
        return Stream.of(Stream.of(""), Arrays.stream(Leaning.values()).map(Leaning::id), Stream.of("none"))
                .flatMap(ids -> ids)
                .map(id -> new Tab(
                        id,
                        filter.with("/desk", "leaning", id),
                        id.isEmpty()
                                ? Long.valueOf(within.values().stream()
                                        .mapToLong(n -> n)
                                        .sum())
                                : within.getOrDefault(id, 0L),
                        id.equals(filter.leaning())))
                .filter(tab -> tab.count() > 0 || tab.here() || tab.id().isEmpty())
                .toList();
    }

    /** Counts by leaning of one state, of the open ones, or of all. */
    private static Map<String, Long> within(Map<String, Map<String, Long>> counts, String state) {
        Map<String, Long> sums = new LinkedHashMap<>();
        counts.forEach((id, byLeaning) -> {
            boolean counted = state.equals(DeskFilter.ALL)
                    || state.equals(id)
                    || state.equals(DeskFilter.OPEN) && ClaimState.of(id).isOpen();
            if (counted) {
                byLeaning.forEach((leaning, n) -> sums.merge(leaning, n, Long::sum));
            }
        });
        return sums;
    }
}
