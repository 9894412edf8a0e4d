package org.voltdocket.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.access.AccountService;
import org.voltdocket.assessment.AssessmentService;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimState;
import org.voltdocket.claim.service.ClaimService;
import org.voltdocket.claim.service.ClaimStepService;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Channel;
import org.voltdocket.diagnosis.Evidence;
import org.voltdocket.diagnosis.Facts;
import org.voltdocket.diagnosis.History;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.dossier.SentCase;
import org.voltdocket.evidence.DuplicateRecordings;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Role;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** Every demo case enters by the workshop's doors, and the archive reads and judges it as the generator made it. */
@ServerTest
class DemoArchiveTest {

    @Autowired
    private AccountService accounts;

    @Autowired
    private CaseService cases;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private EvidenceUploadService uploads;

    @Autowired
    private DuplicateRecordings fingerprints;

    @Autowired
    private EvidenceArchive archive;

    @Autowired
    private AssessmentService assessments;

    @Autowired
    private ClaimService claims;

    @Autowired
    private ClaimStepService steps;

    @Autowired
    private Server server;

    @Test
    void everyCauseIsThereAndTwoCasesHaveNothingWrong() {
        Set<Cause> causes =
                DemoCase.ALL.stream().map(one -> one.scenario().cause()).collect(Collectors.toSet());
        assertThat(causes).containsExactlyInAnyOrder(Cause.values());
        assertThat(DemoCase.ALL)
                .filteredOn(one -> one.only().isEmpty() && one.scenario().cause() == Cause.NONE)
                .hasSizeGreaterThanOrEqualTo(2);
        assertThat(DemoCase.ALL).extracting(DemoCase::account).contains("workshop", "workshop2");
    }

    @Test
    void theClaimsCoverEveryState() {
        Actor workshop = server.newUser(Role.WORKSHOP).actor();
        Actor clerk = server.user(Role.CLERK).actor();
        assertThat(DemoClaims.ALL).hasSameSizeAs(DemoCase.ALL);
        DemoClaims demo = new DemoClaims(claims, steps);
        Set<ClaimState> states = new java.util.TreeSet<>();
        for (DemoClaims.Wanted wanted : DemoClaims.ALL) {
            SentCase sent = SentCase.open(server.as(server.newUser(Role.WORKSHOP, workshop.workshop())));
            CaseReference file = cases.require(workshop, CaseNumber.parse(sent.number()));
            demo.enter(file, wanted, workshop, clerk);
            Claim claim = claims.of(workshop, file.id()).orElseThrow();
            assertThat(claim.steps())
                    .hasSize(wanted.way().isEmpty() ? 0 : wanted.way().split(" ").length);
            states.add(claim.state());
        }
        assertThat(states).containsExactly(ClaimState.values());
    }

    @Test
    void whatEntersIsReadAndJudgedAsItWasMade() throws IOException {
        Actor actor = server.newUser(Role.WORKSHOP).actor();
        DemoArchive demo =
                new DemoArchive(accounts, cases, null, caseEdits, uploads, new DemoClaims(claims, steps), event -> {});
        Rulebook rulebook = rulebook();
        for (DemoCase one : DemoCase.ALL) {
            int files = demo.enter(one, actor);
            GeneratedCase made = one.generate();
            UUID id = idOf(actor, made);
            List<Evidence> kept = archive.readings(id);
            List<Evidence> meant = made.toCaseInput().evidence().stream()
                    .filter(evidence -> one.sent(made).stream()
                            .anyMatch(item -> item.reading().equals(evidence.reading())))
                    .toList();
            assertThat(kept).hasSize(files);
            for (Evidence evidence : meant) {
                Evidence found = kept.stream()
                        .filter(other -> other.sha256().equals(evidence.sha256()))
                        .findFirst()
                        .orElseThrow();
                sameReading(evidence, found);
            }
            Facts facts = cases.facts(id).facts();
            History history = cases.history(id).with(fingerprints.copiedFromAnotherBattery(id));
            Assessment here = Diagnosis.assess(new CaseInput(facts, history, meant), rulebook);
            Assessment there = assessments.latest(id).orElseThrow().assessment();
            // an assessment is kept with ten significant digits
            assertThat(there.causes())
                    .as("%s", one.scenario())
                    .usingRecursiveComparison()
                    .withComparatorForType(
                            (a, b) -> Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a)) ? 0 : Double.compare(a, b),
                            Double.class)
                    .isEqualTo(here.causes());
            assertThat(there.leaning()).isEqualTo(here.leaning());

            assertThat(demo.enter(one, actor)).isEqualTo(files);
            assertThat(archive.ofCase(id)).hasSize(files);
        }
    }

    private UUID idOf(Actor actor, GeneratedCase made) {
        return cases.ofBattery(actor, made.serial()).get(0).ref().id();
    }

    private static void sameReading(Evidence meant, Evidence found) {
        if (!(meant.reading() instanceof Recording recording)) {
            assertThat(found.reading()).isEqualTo(meant.reading());
            return;
        }
        Recording read = (Recording) found.reading();
        assertThat(read.kind()).isEqualTo(recording.kind());
        assertThat(read.timeS()).isEqualTo(recording.timeS());
        assertThat(read.marks()).isEqualTo(recording.marks());
        for (Channel channel : Channel.values()) {
            assertThat(read.channel(channel)).as(channel.id()).isEqualTo(recording.channel(channel));
        }
    }

    private static Rulebook rulebook() throws IOException {
        try (InputStream in = Rulebook.class.getResourceAsStream("/shared/rulebook/2026.1.yaml")) {
            return Rulebook.read(in);
        }
    }
}
