package org.voltdocket.dossier;

import static org.assertj.core.api.Assertions.assertThat;

import com.lowagie.text.pdf.PdfDictionary;
import com.lowagie.text.pdf.PdfName;
import com.lowagie.text.pdf.PdfObject;
import com.lowagie.text.pdf.PdfReader;
import com.lowagie.text.pdf.PdfStream;
import com.lowagie.text.pdf.parser.PdfTextExtractor;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.voltdocket.demo.Scenario;
import org.voltdocket.kernel.Role;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.support.Answer;
import org.voltdocket.support.Client;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;
import org.voltdocket.ui.TextFormatter;
import tools.jackson.databind.JsonNode;

/** Reads printed reports back: all that was judged stands in them, and the file is what it says it is. */
@ServerTest
class ReportTest {

    @Autowired
    private Server server;

    @Autowired
    private TextFormatter words;

    @Test
    void tellsTheVerdictEveryFindingAndTheDigestOfEveryItem() throws IOException {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        SentCase sent = SentCase.of(workshop, Scenario.SENSOR_READS_HIGH, 189);
        JsonNode told = workshop.get(sent.api()).json();
        JsonNode assessment = told.get("assessment");
        String text = bare(text(report(workshop, sent)));

        assertThat(text).contains(bare(assessment.get("said").stringValue()));
        assertThat(assessment.get("findings").size()).isGreaterThan(10);
        for (JsonNode finding : assessment.get("findings")) {
            assertThat(text).contains(bare(finding.get("said").stringValue()));
            assertThat(text).contains(bare(finding.get("source").stringValue()));
            if (finding.has("value")) {
                assertThat(text).contains(bare(words.number(finding.get("value").doubleValue())));
            }
        }
        for (JsonNode cause : assessment.get("causes")) {
            assertThat(text)
                    .contains(bare(words.of("cause-name", cause.get("cause").stringValue())));
            assertThat(text)
                    .contains(bare(words.percent(cause.get("probability").doubleValue())));
        }
        for (JsonNode estimate : assessment.get("estimates")) {
            assertThat(text).contains(bare(words.number(estimate.get("low").doubleValue())));
        }
        for (JsonNode step : assessment.get("nextSteps")) {
            assertThat(text).contains(bare(step.stringValue()));
        }
        assertThat(sent.files()).hasSizeGreaterThan(3);
        sent.files().keySet().forEach(digest -> assertThat(text).contains(digest));
        assertThat(text)
                .contains(bare(told.get("batterySerial").stringValue()))
                .contains(told.get("vin").stringValue())
                .contains(bare("by rule book " + assessment.get("rulebook").stringValue()))
                .contains(assessment.get("assessedAt").stringValue())
                .contains("hydrogen", "Acid", "Shortcircuit", "Runningengine", "Localregulations")
                .contains(bare("Measured voltage"), bare("Reported current"), bare("Discharging"));
    }

    @Test
    void theSameCaseGivesTheSameBytesUntilSomethingHappensToIt() throws IOException {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        SentCase sent = SentCase.of(workshop, Scenario.SOURCE_DEAD, 103);
        Answer first = workshop.get(sent.api() + "/report.pdf");
        Answer second = workshop.get(sent.api() + "/report.pdf");
        assertThat(first.header("content-type")).hasValue("application/pdf");
        assertThat(second.body()).isEqualTo(first.body());
        String tag = "\"" + Sha256.of(first.body()) + "\"";
        assertThat(first.header("etag")).hasValue(tag);
        assertThat(workshop.header("If-None-Match", tag)
                        .get(sent.api() + "/report.pdf")
                        .status())
                .isEqualTo(304);

        workshop.patchJson(sent.api(), "{\"complaint\":\"Something else entirely.\"}");
        Answer changed = workshop.get(sent.api() + "/report.pdf");
        assertThat(changed.body()).isNotEqualTo(first.body());
        assertThat(bare(text(changed))).contains(bare("Something else entirely."));
    }

    @Test
    void isTaggedDescribedAndCarriesItsFonts() throws IOException {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        SentCase sent = SentCase.of(workshop, Scenario.CABLE_RESISTANCE, 102);
        PdfReader pdf = new PdfReader(report(workshop, sent).body());
        PdfDictionary catalog = pdf.getCatalog();
        assertThat(catalog.get(PdfName.LANG)).hasToString("en");
        assertThat(catalog.getAsDict(PdfName.MARKINFO).get(PdfName.MARKED)).hasToString("true");
        assertThat(catalog.getAsDict(PdfName.STRUCTTREEROOT)).isNotNull();
        assertThat(pdf.getInfo()).containsEntry("Title", "Report on case " + sent.number());
        assertThat(new String(pdf.getMetadata(), StandardCharsets.UTF_8)).contains("Report on case " + sent.number());

        List<String> fonts = new ArrayList<>();
        List<String> structure = new ArrayList<>();
        int figures = 0;
        for (int i = 1; i < pdf.getXrefSize(); i++) {
            PdfObject object = pdf.getPdfObject(i);
            if (object instanceof PdfDictionary dictionary && !(object instanceof PdfStream)) {
                if (PdfName.FONTDESCRIPTOR.equals(dictionary.get(PdfName.TYPE))) {
                    fonts.add(dictionary.get(PdfName.FONTNAME).toString());
                    assertThat(dictionary.get(PdfName.FONTFILE2)).isNotNull();
                }
                if ("/StructElem".equals(String.valueOf(dictionary.get(PdfName.TYPE)))) {
                    structure.add(dictionary.get(PdfName.S).toString());
                    figures += dictionary.get(new PdfName("Alt")) == null ? 0 : 1;
                }
            }
        }
        assertThat(fonts).hasSize(3).allMatch(name -> name.matches("/[A-Z]{6}\\+DejaVu.*"));
        assertThat(structure).contains("/Document", "/H1", "/H2", "/P", "/L", "/Table", "/TR", "/TH", "/TD", "/Figure");
        long recordings = sent.files().values().stream()
                .filter(file -> new String(file, StandardCharsets.UTF_8).startsWith("time"))
                .count();
        assertThat(recordings).isPositive();
        assertThat(figures).isEqualTo((int) recordings);
    }

    @Test
    void aCaseWithoutEvidenceAndOneWithUnwieldyNamesPrintToo() throws IOException {
        Client workshop = server.as(server.newUser(Role.WORKSHOP));
        SentCase empty = SentCase.open(workshop);
        assertThat(bare(text(report(workshop, empty)))).contains(bare("No evidence yet."));

        String word = "x".repeat(3900);
        workshop.patchJson(empty.api(), "{\"complaint\":\"" + word + "\"}");
        String note = "n".repeat(400);
        String test = "{\"kind\":\"battery-test\",\"takenAt\":\"2026-03-04T08:40:00+01:00\",\"restVoltageV\":12.61,"
                + "\"temperatureC\":18}";
        empty.send(workshop, "longname".repeat(20) + ".json", test.getBytes(StandardCharsets.UTF_8), note);
        String text = bare(text(report(workshop, empty)));
        assertThat(text).contains("12.61").contains(note);
        assertThat(text.chars().filter(c -> c == 'x').count()).isGreaterThanOrEqualTo(3900);
    }

    @Test
    void othersDoNotSeeIt() {
        Server.User owner = server.newUser(Role.WORKSHOP);
        SentCase sent = SentCase.open(server.as(owner));
        Server.User other = server.newUser(Role.WORKSHOP);
        for (String paper : List.of("/report.pdf", "/bag.zip")) {
            assertThat(server.as(other).get(sent.api() + paper).status()).isEqualTo(404);
            assertThat(server.anonymous().get(sent.api() + paper).status()).isEqualTo(401);
            assertThat(server.as(Role.AUDITOR).get(sent.api() + paper).status()).isEqualTo(200);
            String page = "/cases/" + sent.number() + paper;
            assertThat(server.browser(owner).get(page).status()).isEqualTo(200);
            assertThat(server.browser(other).get(page).status()).isEqualTo(404);
            assertThat(server.browser(owner).get("/cases/" + sent.number()).text())
                    .contains("href=\"" + page + "\"");
        }
    }

    private static Answer report(Client client, SentCase sent) {
        Answer report = client.get(sent.api() + "/report.pdf");
        assertThat(report.status()).as(report.toString()).isEqualTo(200);
        return report;
    }

    private static String text(Answer report) throws IOException {
        PdfReader pdf = new PdfReader(report.body());
        PdfTextExtractor extractor = new PdfTextExtractor(pdf);
        StringBuilder text = new StringBuilder();
        for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
            text.append(extractor.getTextFromPage(page)).append('\n');
        }
        return text.toString();
    }

    /** Without blanks: text wraps where it must. */
    private static String bare(String text) {
        return text.replaceAll("[\\s\\u00a0\\u202f]+", "");
    }
}
