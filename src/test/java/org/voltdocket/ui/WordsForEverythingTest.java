package org.voltdocket.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.context.MessageSource;
import org.voltdocket.claim.ClaimAction;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.diagnosis.BatteryReason;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.ChargingControl;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.diagnosis.CrankingStandard;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.diagnosis.Regime;
import org.voltdocket.diagnosis.Result;
import org.voltdocket.diagnosis.read.RejectedFile;
import org.voltdocket.diagnosis.rulebook.Editions;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.kernel.Role;
import org.voltdocket.notice.NoticeKind;
import org.voltdocket.trail.ChainVerification.Fault;

/** Every identifier a person may meet has a label, and every message a template names is there. */
class WordsForEverythingTest {

    private static final Pattern PROBLEM =
            Pattern.compile("ProblemDetails\\s*\\.of\\(\\s*HttpStatus\\.\\w+,\\s*\"([a-z0-9-]+)\",", Pattern.DOTALL);
    private static final Pattern REFUSAL = Pattern.compile(
            "RequestException\\s*\\.(?:of\\(\\s*\\d{3},|invalid\\()\\s*\"([a-z0-9-]+)\",", Pattern.DOTALL);
    private static final Pattern KIND = Pattern.compile("\\(\\d{3}, \"([a-z-]+)\", \"");
    private static final Pattern MESSAGE = Pattern.compile("#\\{([a-z][a-zA-Z0-9.-]+)[}(]");

    private final MessageSource messages = messages();

    @Test
    void identifiersHaveLabels() {
        List<String> missing = new ArrayList<>();
        need(missing, BatteryVerdict.values(), BatteryVerdict::id, "verdict", "verdict-means");
        need(missing, BatteryReason.values(), BatteryReason::id, "battery-reason", "battery-reason-means");
        need(missing, Leaning.values(), Leaning::id, "leaning", "leaning-means");
        need(missing, Cause.values(), Cause::id, "cause-name", "cause-means");
        need(missing, Regime.values(), Regime::id, "regime", "regime-means");
        need(missing, Result.values(), Result::id, "result", "result-means");
        need(missing, EvidenceKind.values(), EvidenceKind::id, "kind");
        need(missing, Origin.values(), Origin::id, "origin");
        need(missing, Channel.values(), Channel::id, "channel", "channel-unit");
        need(missing, Chemistry.values(), Chemistry::id, "chemistry");
        need(missing, CrankingStandard.values(), CrankingStandard::id, "cranking-standard");
        need(missing, ChargingControl.values(), ChargingControl::id, "charging-control");
        need(missing, ClaimState.values(), ClaimState::id, "claim-state", "claim-state-means");
        need(missing, ClaimAction.values(), ClaimAction::id, "claim-action", "claim-step", "claim.notice");
        for (ClaimAction action : ClaimAction.values()) {
            need(missing, "act.claim-" + action.id());
        }
        need(missing, NoticeKind.values(), NoticeKind::id, "notice-kind", "notice.said");
        need(missing, Fault.values(), Fault::id, "trails.fault");
        need(missing, Role.values(), Role::name, "role");
        assertThat(missing).isEmpty();
    }

    @Test
    void quantitiesAndFindingsOfTheRuleBookHaveWords() {
        List<String> missing = new ArrayList<>();
        for (Rulebook book : Editions.all()) {
            for (var rule : book.rules()) {
                need(missing, "quantity." + rule.quantity().replaceAll("/\\d+$", ""));
                need(missing, "comparison." + rule.comparison());
                need(missing, "decides." + rule.decides().name());
            }
        }
        assertThat(missing).isEmpty();
    }

    @Test
    void problemsHaveAPlaceInTheManual() throws IOException {
        TreeSet<String> slugs = new TreeSet<>();
        Arrays.stream(RejectedFile.Reason.values())
                .map(RejectedFile.Reason::slug)
                .forEach(slugs::add);
        for (String source : sources("src/main/java", ".java")) {
            Matcher problem = PROBLEM.matcher(source);
            while (problem.find()) {
                slugs.add(problem.group(1));
            }
            Matcher refusal = REFUSAL.matcher(source);
            while (refusal.find()) {
                slugs.add(refusal.group(1));
            }
            Matcher kind = KIND.matcher(source);
            while (kind.find()) {
                slugs.add(kind.group(1));
            }
        }
        assertThat(slugs).contains("not-found", "facts-refused", "recording-refused");
        List<String> missing = new ArrayList<>();
        String page =
                String.join("\n", sources("src/main/java/org/voltdocket/assessment/web", "ManualPageController.java"));
        for (String slug : slugs) {
            need(missing, "problem." + slug + ".title");
            need(missing, "problem." + slug + ".why");
            need(missing, "problem." + slug + ".next");
            if (!page.contains("\"" + slug + "\"")) {
                missing.add(slug + " on the page of problems");
            }
        }
        assertThat(missing).isEmpty();
    }

    @Test
    void messagesThatTemplatesNameExist() throws IOException {
        List<String> missing = new ArrayList<>();
        for (String template : sources("src/main/resources/templates", ".html")) {
            Matcher named = MESSAGE.matcher(template);
            while (named.find()) {
                need(missing, named.group(1));
            }
        }
        assertThat(missing).isEmpty();
    }

    private static List<String> sources(String folder, String end) throws IOException {
        List<String> texts = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Path.of(folder))) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(end)).sorted().toList()) {
                texts.add(Files.readString(file));
            }
        }
        return texts;
    }

    private <E> void need(List<String> missing, E[] all, Function<E, String> id, String... groups) {
        for (E one : all) {
            for (String group : groups) {
                need(missing, group + "." + id.apply(one));
            }
        }
    }

    private void need(List<String> missing, String code) {
        if (messages.getMessage(code, null, null, Locale.ENGLISH) == null) {
            missing.add(code);
        }
    }

    private static MessageSource messages() {
        try {
            return new MessageSourceConfiguration().messageSource();
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
