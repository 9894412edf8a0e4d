package org.voltdocket.demo;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.voltdocket.demo.model.GroundTruth;
import org.voltdocket.diagnosis.Facts;

/**
 * Writes the files of one invented case into a folder, to try them by hand: arguments are scenario, seed and folder.
 * The facts and the truth go into {@code about.txt}.
 */
final class GeneratedFiles {

    private GeneratedFiles() {}

    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 3) {
            throw new IllegalArgumentException(
                    "arguments: scenario seed folder, as in SENSOR_READS_HIGH 1 target/files");
        }
        GeneratedCase made = Generator.generate(Scenario.valueOf(arguments[0]), Long.parseLong(arguments[1]));
        Path folder = Files.createDirectories(Path.of(arguments[2]));
        for (GeneratedItem item : made.items()) {
            Files.write(folder.resolve(item.fileName()), item.content());
        }
        Files.writeString(folder.resolve("about.txt"), about(made));
    }

    static String about(GeneratedCase made) {
        Facts facts = made.facts();
        StringBuilder out = new StringBuilder();
        out.append(made.scenario()).append(" seed ").append(made.seed()).append(", truly ");
        out.append(made.cause().id()).append('\n');
        out.append(made.serial()).append(' ').append(made.vin()).append('\n');
        out.append(facts.battery()).append('\n').append(facts.vehicle()).append('\n');
        out.append(facts.complaint()).append("\nreplaced before: ").append(facts.batteriesReplacedBefore());
        out.append('\n');
        made.items().forEach(item -> {
            out.append(item.fileName())
                    .append(' ')
                    .append(item.content().length)
                    .append(" bytes");
            if (item.fileName().endsWith(".json")) {
                out.append(' ').append(new String(item.content(), java.nio.charset.StandardCharsets.UTF_8).trim());
            }
            out.append('\n');
        });
        for (GroundTruth truth : made.truths()) {
            out.append(String.format(
                    "offset %.2f A, charge %.3f to %.3f, net %.2f Ah, cable %.1f mOhm, ohmic %.1f mOhm%n",
                    truth.sensorOffsetA(),
                    truth.chargeStart(),
                    truth.chargeEnd(),
                    truth.netAh(),
                    truth.cableOhm() * 1000,
                    truth.ohmic() * 1000));
            out.append(truth.spans()).append('\n');
        }
        return out.toString();
    }
}
