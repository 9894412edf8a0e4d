package org.voltdocket.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Role;
import org.voltdocket.returned.ArrivalWarning;
import org.voltdocket.returned.BenchComparison;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.ReturnListItem;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.returned.pallet.Pallet;
import org.voltdocket.returned.pallet.PalletService;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/** The demo's returned batteries come in by the auditor's doors, and say what their story says. */
@ServerTest
class DemoReturnsTest {

    @Autowired
    private ReturnService returns;

    @Autowired
    private PalletService pallets;

    @Autowired
    private CaseService cases;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private BenchComparison results;

    @Autowired
    private Clock clock;

    @Autowired
    private Server server;

    @Test
    void everyStoryIsPlayed() {
        Actor workshop = server.newUser(Role.WORKSHOP).actor();
        Actor auditor = server.user(Role.AUDITOR).actor();
        for (DemoReturns.Story story : DemoReturns.STORIES) {
            GeneratedCase made = DemoReturns.made(story);
            try {
                caseEdits.open(workshop, new NewCase(made.serial(), made.vin(), made.facts()));
            } catch (RequestException there) {
                // another test of the demo opened it
                assertThat(there.code()).isEqualTo(CaseService.IN_OTHER_WORKSHOP);
            }
        }
        new DemoReturns(returns, pallets, cases, clock).play(auditor);
        Pallet first = pallets.all(auditor).stream()
                .filter(pallet -> pallet.number().equals("PAL-0417"))
                .findFirst()
                .orElseThrow();
        assertThat(first.listed() - first.arrived()).isEqualTo(1);
        List<ReturnListItem> lines = pallets.whole(auditor, first.id()).lines().stream()
                .flatMap(line -> Optional.ofNullable(line.battery()).stream())
                .toList();
        assertThat(lines).anySatisfy(line -> assertThat(line.warnings()).contains(ArrivalWarning.NO_CASE));
        ReturnedBattery sound = lines.stream()
                .filter(line -> line.outcome()
                        .filter(BenchOutcome.NO_FAULT_FOUND::equals)
                        .isPresent())
                .map(line -> returns.of(auditor, line.id()))
                .findFirst()
                .orElseThrow();
        assertThat(sound.evidence())
                .extracting(item -> item.kind())
                .contains(EvidenceKind.BATTERY_TEST, EvidenceKind.DISCHARGE_RECORDING);
        assertThat(results.of(sound).runs())
                .singleElement()
                .satisfies(run -> assertThat(run.sharePct()).isBetween(90.0, 106.0));
    }
}
