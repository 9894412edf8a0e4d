package org.voltdocket.browser;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.access.NewAccount;
import org.voltdocket.access.invitation.InvitationService;
import org.voltdocket.assessment.CaseEditService;
import org.voltdocket.assessment.EvidenceUploadService;
import org.voltdocket.assessment.edition.EditionService;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NewCase;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.demo.GeneratedCase;
import org.voltdocket.demo.GeneratedItem;
import org.voltdocket.demo.Generator;
import org.voltdocket.demo.Scenario;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.evidence.Upload;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.Role;
import org.voltdocket.returned.BatteryCondition;
import org.voltdocket.returned.BenchOutcome;
import org.voltdocket.returned.lot.Lot;
import org.voltdocket.returned.lot.LotService;
import org.voltdocket.returned.pallet.Pallet;
import org.voltdocket.returned.pallet.PalletDeliveryNote;
import org.voltdocket.returned.pallet.PalletService;
import org.voltdocket.returned.sampling.InspectionLevel;
import org.voltdocket.returned.service.ReturnService;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

/**
 * Every page at phone width and light, with all rules of axe-core, and at desk width and dark, with the rules that depend
 * on width or colours: nothing serious, and no page wider than its window.
 */
@ServerTest
class EveryPageTest {

    @Autowired
    private Server server;

    @Autowired
    private CaseService cases;

    @Autowired
    private CaseEditService caseEdits;

    @Autowired
    private EvidenceUploadService uploads;

    @Autowired
    private EvidenceArchive archive;

    @Autowired
    private ReturnService returns;

    @Autowired
    private PalletService pallets;

    @Autowired
    private LotService lots;

    @Autowired
    private EditionService editions;

    @Autowired
    private CatalogueService catalogue;

    @Autowired
    private InvitationService invitations;

    @Test
    void publicPages() {
        List<String> paths = List.of(
                "/sign-in",
                "/sign-in?error",
                "/sign-in?openid=no-role",
                invitation(),
                "/licences",
                "/rulebook",
                "/manual",
                "/manual/tests",
                "/manual/recordings",
                "/manual/words",
                "/manual/returns",
                "/manual/notices",
                "/manual/suppliers",
                "/manual/running",
                "/manual/security",
                "/manual/problems",
                "/manual/safety");
        check(null, paths);
    }

    private String invitation() {
        String name = "every-page-" + System.nanoTime() % 1_000_000_000L;
        return invitations
                .invite(Actor.system(), new NewAccount(name, null, Role.AUDITOR, Optional.empty()))
                .path();
    }

    @Test
    void pagesOfAWorkshop() {
        Server.User user = server.newUser(Role.WORKSHOP);
        GeneratedCase made = Generator.generate(Scenario.SENSOR_READS_HIGH, 4721);
        CaseReference ref = caseEdits
                .open(user.actor(), new NewCase(made.serial(), made.vin(), made.facts()))
                .ref();
        for (GeneratedItem item : made.items()) {
            Upload upload =
                    new Upload(item.fileName(), new ByteArrayInputStream(item.content()), "a note", Origin.WORKSHOP);
            uploads.receive(user.actor(), ref, upload);
        }
        List<String> paths = new ArrayList<>(List.of(
                "/cases",
                "/cases?q=nothing-such",
                "/cases/new",
                "/cases/" + ref.number(),
                "/cases/" + ref.number() + "/compare",
                "/cases/" + ref.number() + "/tests",
                "/cases/" + ref.number() + "/tests/battery-test",
                "/cases/" + ref.number() + "/tests/charging-test",
                "/offline",
                "/cases/" + ref.number() + "/links",
                "/history/battery/" + ref.serial(),
                "/history/vehicle/" + ref.vin(),
                "/cases/V-000-000-1",
                "/desk",
                "/desk?state=all&look=objection",
                "/desk?least=abc",
                "/desk/days",
                "/warranty",
                "/account",
                "/usage"));
        for (EvidenceItem item : archive.ofCase(ref.id())) {
            paths.add("/evidence/" + item.id());
        }
        check(user, paths);
    }

    @Test
    void pagesOfTheDistributor() {
        check(
                server.user(Role.AUDITOR),
                List.of(
                        "/insight",
                        "/insight/no-fault?by=assessment",
                        "/insight/money",
                        "/insight/learning",
                        "/insight/production-weeks",
                        "/insight/causes",
                        "/insight/time-to-claim",
                        "/insight/repeated-vehicles"));
        check(
                server.user(Role.CLERK),
                List.of(
                        "/cases",
                        "/cases?leaning=vehicle-side&cause=wiring",
                        "/account",
                        "/desk?state=all&order=newest",
                        "/desk?age=never",
                        "/warranty",
                        "/claim-limits",
                        "/decisions/again"));
        check(
                server.user(Role.ADMIN),
                List.of(
                        "/watch",
                        "/privacy",
                        "/editions",
                        "/reassessments",
                        "/editions/" + draft(),
                        "/accounts",
                        "/accounts/sign-ins",
                        "/account",
                        "/account/second-factor",
                        "/catalogue",
                        "/catalogue?serial=NONE-SUCH",
                        "/trail",
                        "/recoveries",
                        "/notices",
                        "/warranty",
                        "/desk/days",
                        "/claim-limits"));
    }

    @Test
    void pagesOfASupplier() {
        String code = "EP" + System.nanoTime() % 1_000_000_000L;
        take("supplier,name\n" + code + ",Every Page Works\n");
        take("type,name,supplier,chemistry,capacity_ah\n" + code + ",Invented 70," + code + ",agm,70\n");
        take("type,batch,first_serial,last_serial,produced_on,count\n" + code + ",B1," + code + "-0001," + code
                + "-0099,2025-03-10,99\n");
        Server.User workshop = server.newUser(Role.WORKSHOP);
        Client owner = server.as(workshop);
        Client clerk = server.as(Role.CLERK);
        String number = owner.postJson(
                        "/api/v1/cases", "{\"batterySerial\":\"" + code + "-0007\",\"vin\":\"1M8GDM9AXKP042788\"}")
                .json()
                .get("number")
                .stringValue();
        String claim = "/api/v1/cases/" + number + "/claim";
        String reason = "{\"reason\":\"The posts show a cell that no longer holds; tested again after a charge.\"}";
        owner.postJson(claim, "{\"amount\":\"80.00\",\"currency\":\"EUR\"}");
        owner.postJson(claim + "/submit", "{}");
        clerk.postJson(claim + "/take", "{}");
        clerk.postJson(claim + "/approve", reason);
        owner.postJson(claim + "/objection", "{\"reason\":\"The sum leaves out the labour.\"}");
        String list = clerk.postJson("/api/v1/recoveries", "{\"supplier\":\"" + code + "\",\"currency\":\"EUR\"}")
                .json()
                .get("number")
                .stringValue();
        check(
                server.user(Role.CLERK),
                List.of(
                        "/recoveries/" + list,
                        "/catalogue/" + code,
                        "/cases/" + number,
                        "/desk?state=all&look=objection",
                        "/desk?state=all&q=" + number));
    }

    private void take(String csv) {
        catalogue.take(server.user(Role.ADMIN).actor(), "file.csv", csv.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void pagesOfReturnedBatteries() {
        Server.User workshop = server.newUser(Role.WORKSHOP);
        Server.User auditor = server.user(Role.AUDITOR);
        List<UUID> ids = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            GeneratedCase made = Generator.generate(Scenario.WORN, 8801 + i);
            caseEdits.open(workshop.actor(), new NewCase(made.serial(), made.vin(), made.facts()));
            ids.add(returns.arrive(auditor.actor(), made.serial(), Optional.empty())
                    .battery()
                    .id());
        }
        PalletDeliveryNote note =
                PalletDeliveryNote.parse("P-" + System.nanoTime(), "Somebody", "", "EVERY-PAGE-1", LocalDate.now());
        Pallet pallet = pallets.note(auditor.actor(), note);
        Lot lot = lots.draw(
                auditor.actor(),
                new Lot.Request(
                        Lot.Scope.WORKSHOP,
                        workshop.actor().workshop().orElseThrow().toString(),
                        InspectionLevel.II,
                        2.5,
                        false));
        BatteryCondition leaking =
                new BatteryCondition(false, true, false, false, BatteryCondition.Terminals.CORRODED, "wet", null, null);
        returns.recordCondition(auditor.actor(), ids.get(0), leaking);
        returns.recordOutcome(auditor.actor(), ids.get(1), BenchOutcome.WEAR_CONFIRMED, "as measured");
        check(
                auditor,
                List.of(
                        "/returns",
                        "/returns/" + ids.get(0),
                        "/returns/pallets",
                        "/returns/pallets/" + pallet.id(),
                        "/returns/lots",
                        "/returns/lots/" + lot.id(),
                        "/insight/agreement",
                        "/decisions/again"));
    }

    /** Address of the edition in the making, or of any. */
    private String draft() {
        return editions.all().get(0).sha256().hex();
    }

    private void check(Server.User user, List<String> paths) {
        List<String> wrong = new ArrayList<>();
        try (Chromium chromium = new Chromium()) {
            for (boolean dark : new boolean[] {false, true}) {
                Page page = chromium.window(Chromium.DESK, true, dark);
                if (user != null) {
                    Chromium.signIn(page, server, user);
                }
                for (String path : paths) {
                    look(page, path, dark ? Chromium.DESK : Chromium.PHONE, wrong);
                }
                page.context().close();
            }
            wrong.addAll(chromium.complaints());
        }
        assertThat(wrong).isEmpty();
    }

    private void look(Page page, String path, int width, List<String> wrong) {
        page.setViewportSize(width, 900);
        page.navigate(server.url() + path);
        page.evaluate("document.querySelectorAll('main details').forEach(d => { d.open = true; })");
        page.evaluate("document.querySelectorAll('.panel').forEach(p => { p.classList.add('open'); })");
        if (page.locator("figure.recording").count() > 0) {
            page.waitForSelector("[data-part=plot][data-drawn]");
        }
        if (Chromium.overflow(page) > 0) {
            wrong.add(path + " is wider than " + width + " by " + Chromium.overflow(page));
        }
        wrong.addAll(width == Chromium.DESK ? Chromium.visualViolations(page) : Chromium.seriousViolations(page));
    }
}
