package org.voltdocket.insight.web;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.springframework.format.annotation.DateTimeFormat;
import org.springframework.format.annotation.DateTimeFormat.ISO;
import org.springframework.http.CacheControl;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.voltdocket.insight.CaseSelection;
import org.voltdocket.insight.InsightQuery;
import org.voltdocket.insight.InsightService;
import org.voltdocket.insight.TestAgreementService;
import org.voltdocket.insight.Topic;
import org.voltdocket.insight.TopicResult;
import org.voltdocket.insight.analysis.EditionProposal;
import org.voltdocket.insight.chart.Drawing;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;

/** A page for each topic; the query is in the address. */
@Controller
class InsightPageController {

    private final InsightService insights;
    private final InsightCsv csv;
    private final InsightFormatter words;
    private final TestAgreementService agreement;
    private final EditionProposal proposal;
    private final Clock clock;

    InsightPageController(
            InsightService insights,
            InsightCsv csv,
            InsightFormatter words,
            TestAgreementService agreement,
            EditionProposal proposal,
            Clock clock) {
        this.insights = insights;
        this.csv = csv;
        this.words = words;
        this.agreement = agreement;
        this.proposal = proposal;
        this.clock = clock;
    }

    /** The question's part of an address; a day left out is a year ago, or today. */
    record Asked(
            @DateTimeFormat(iso = ISO.DATE) Optional<LocalDate> from,
            @DateTimeFormat(iso = ISO.DATE) Optional<LocalDate> to,
            String by) {

        Asked {
            by = by == null ? "" : by;
        }
    }

    @GetMapping("/insight")
    String all(Actor actor, Asked asked, Model model) {
        List<InsightFormatter.Brief> briefs = Arrays.stream(Topic.values())
                .map(topic -> insights.of(actor, topic, query(topic, new Asked(asked.from(), asked.to(), ""))))
                .map(words::brief)
                .toList();
        InsightQuery query = query(Topic.CAUSES, new Asked(asked.from(), asked.to(), ""));
        model.addAttribute("briefs", briefs);
        model.addAttribute("instruments", words.instruments(agreement.instruments(actor)));
        model.addAttribute("question", query);
        return "insight/index";
    }

    @GetMapping("/insight/{topic}")
    String topic(Actor actor, @PathVariable("topic") String id, Asked asked, Model model) {
        Topic topic = find(id);
        InsightQuery query = query(topic, asked);
        TopicResult insight = insights.of(actor, topic, query);
        model.addAttribute(
                "topics", Arrays.stream(Topic.values()).map(Topic::id).toList());
        model.addAttribute("topic", topic.id());
        model.addAttribute("question", query);
        model.addAttribute("ways", InsightQuery.groupings(topic));
        model.addAttribute("statements", words.sentences(insight));
        model.addAttribute("columns", insight.table().columns());
        model.addAttribute("rows", words.rows(insight.table()));
        model.addAttribute("drawn", insight.drawing().isPresent());
        return "insight/topic";
    }

    @GetMapping("/insight/{topic}/cases")
    String cases(Actor actor, @PathVariable("topic") String id, Asked asked, @RequestParam String key, Model model) {
        Topic topic = find(id);
        InsightQuery query = query(topic, asked);
        CaseSelection behind = insights.cases(actor, topic, query, key)
                .orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
        model.addAttribute("topic", topic.id());
        model.addAttribute("question", query);
        model.addAttribute("behind", behind);
        model.addAttribute("key", key);
        return "insight/cases";
    }

    /** The edition in force with learned odds, as a file. */
    @GetMapping("/insight/learning/edition.yaml")
    ResponseEntity<String> edition(Actor actor, Asked asked) {
        InsightQuery query = query(Topic.LEARNING, new Asked(asked.from(), asked.to(), ""));
        return ResponseEntity.ok()
                .contentType(new MediaType("application", "yaml", java.nio.charset.StandardCharsets.UTF_8))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment()
                                .filename("edition-learned-" + query.to() + ".yaml")
                                .build()
                                .toString())
                .body(proposal.text(actor, query));
    }

    @GetMapping("/insight/{topic}/table.csv")
    ResponseEntity<String> csv(Actor actor, @PathVariable("topic") String id, Asked asked) {
        Topic topic = find(id);
        InsightQuery query = query(topic, asked);
        String name = topic.id() + "-" + query.by() + "-" + query.from() + "-" + query.to() + ".csv";
        return ResponseEntity.ok()
                .contentType(new MediaType("text", "csv", java.nio.charset.StandardCharsets.UTF_8))
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.attachment().filename(name).build().toString())
                .body(csv.write(insights.of(actor, topic, query).table()));
    }

    @GetMapping("/insight/{topic}/chart.png")
    ResponseEntity<byte[]> chart(
            Actor actor,
            @PathVariable("topic") String id,
            Asked asked,
            @RequestParam(defaultValue = "" + Drawing.WIDE) int width) {
        Topic topic = find(id);
        Drawing drawing = insights.of(actor, topic, query(topic, asked))
                .drawing()
                .orElseGet(() -> Drawing.nothing(words.nothing()));
        return ResponseEntity.ok()
                .contentType(MediaType.IMAGE_PNG)
                .cacheControl(CacheControl.noStore())
                .body(drawing.png(width));
    }

    private static Topic find(String id) {
        return Topic.find(id).orElseThrow(() -> new ResponseStatusException(HttpStatus.NOT_FOUND));
    }

    private InsightQuery query(Topic topic, Asked asked) {
        LocalDate to = asked.to().orElse(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC));
        try {
            return InsightQuery.of(topic, asked.from().orElse(to.minusYears(1)), to, asked.by());
        } catch (IllegalArgumentException wrong) {
            throw RequestException.malformed(wrong.getMessage());
        }
    }
}
