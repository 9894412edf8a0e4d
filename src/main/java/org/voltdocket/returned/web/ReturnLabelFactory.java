package org.voltdocket.returned.web;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.paper.DocumentMetadata;
import org.voltdocket.paper.Label;
import org.voltdocket.paper.LabelPrinter;
import org.voltdocket.paper.LabelSize;
import org.voltdocket.returned.ReturnedBattery;
import org.voltdocket.ui.PublicAddress;
import org.voltdocket.ui.TextFormatter;

/** Prints labels of returned batteries: serial, address and the cautions for transport and storage. */
@Component
class ReturnLabelFactory {

    private static final DateTimeFormatter DAY =
            DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH).withZone(ZoneOffset.UTC);

    private final TextFormatter words;
    private final LabelSize usual;
    private final PublicAddress publicAddress;

    ReturnLabelFactory(
            TextFormatter words,
            @Value("${voltdocket.label.width-mm:100}") float widthMm,
            @Value("${voltdocket.label.height-mm:62}") float heightMm,
            PublicAddress publicAddress) {
        this.words = words;
        this.usual = new LabelSize(widthMm, heightMm);
        this.publicAddress = publicAddress;
    }

    /** The configured size. */
    LabelSize usual() {
        return usual;
    }

    /** @param sheet whether to fill A4 sheets instead of one page per label */
    byte[] print(List<ReturnedBattery> batteries, LabelSize size, boolean sheet) {
        List<Label> labels = batteries.stream().map(this::label).toList();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        DocumentMetadata imprint = imprint(batteries, labels, size);
        if (sheet) {
            LabelPrinter.sheets(out, imprint, size, labels);
        } else {
            LabelPrinter.roll(out, imprint, size, labels);
        }
        return out.toByteArray();
    }

    private Label label(ReturnedBattery battery) {
        List<String> lines = new ArrayList<>();
        lines.add(battery.file()
                .map(ref -> words.say("return.label.case", ref.number().value()))
                .orElse(words.say("return.label.no-case")));
        lines.add(words.say("return.label.arrived", DAY.format(battery.arrivedAt())));
        Chemistry chemistry = battery.facts().chemistry();
        if (chemistry != null) {
            Double capacity = battery.facts().capacityAh();
            lines.add(words.of("chemistry", chemistry.id())
                    + (capacity == null ? "" : ", " + words.number(capacity) + " Ah"));
        }
        return new Label(battery.serial().value(), address(battery), battery.number(), lines, cautions(chemistry));
    }

    private List<String> cautions(Chemistry chemistry) {
        String goods = chemistry == null
                ? "return.label.un-unknown"
                : chemistry == Chemistry.AGM || chemistry == Chemistry.GEL
                        ? "return.label.un-2800"
                        : "return.label.un-2794";
        return List.of(
                words.say(goods),
                words.say("return.label.598"),
                words.say("return.label.upright"),
                words.say("return.label.acid"),
                words.say("return.label.damaged"));
    }

    private String address(ReturnedBattery battery) {
        return publicAddress.of("/returns/" + battery.id());
    }

    private DocumentMetadata imprint(List<ReturnedBattery> batteries, List<Label> labels, LabelSize size) {
        String title = batteries.size() == 1
                ? words.say("return.label.title", batteries.get(0).number())
                : words.say("return.label.titles", batteries.size());
        return new DocumentMetadata(
                title,
                batteries.stream().map(ReturnedBattery::number).collect(Collectors.joining(", ")),
                "",
                "",
                "en",
                batteries.get(0).arrivedAt(),
                Sha256.of((labels + " " + size).getBytes(StandardCharsets.UTF_8)));
    }
}
