package org.voltdocket.demo;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import org.voltdocket.casefile.FactsJson;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes the sample cases of the corpus, {@code shared/samples/<cause>}: invented cases of the demo, each with the seed
 * whose files are small. To run again only where the corpus shall change: kept results rest on these bytes.
 */
final class CorpusSamples {

    private static final Map<Scenario, Integer> SEEDS = seeds();

    private CorpusSamples() {}

    private static Map<Scenario, Integer> seeds() {
        Map<Scenario, Integer> seeds = new LinkedHashMap<>();
        seeds.put(Scenario.CELL_SHORTED, 1);
        seeds.put(Scenario.WORN, 1);
        seeds.put(Scenario.SOURCE_WEAK, 7);
        seeds.put(Scenario.SENSOR_READS_HIGH, 3);
        seeds.put(Scenario.CONTROL_STUCK, 6);
        seeds.put(Scenario.CABLE_RESISTANCE, 1);
        seeds.put(Scenario.DRAINED_AT_REST, 2);
        seeds.put(Scenario.SHORT_TRIPS, 9);
        seeds.put(Scenario.WRONG_TYPE, 11);
        seeds.put(Scenario.HEALTHY_MANAGED, 10);
        return seeds;
    }

    public static void main(String[] none) throws IOException {
        for (Map.Entry<Scenario, Integer> one : SEEDS.entrySet()) {
            GeneratedCase made = Generator.generate(one.getKey(), one.getValue());
            Path folder = Files.createDirectories(
                    Path.of("shared/samples").resolve(made.cause().id()));
            Files.writeString(folder.resolve("case-request.json"), request(made) + "\n");
            for (GeneratedItem item : made.items()) {
                boolean packed = item.fileName().endsWith(".csv");
                Files.write(
                        folder.resolve(item.fileName() + (packed ? ".gz" : "")),
                        packed ? gzip(item.content()) : item.content());
            }
        }
    }

    static String request(GeneratedCase made) {
        Map<String, Object> request = new LinkedHashMap<>();
        request.put("batterySerial", made.serial().toString());
        request.put("vin", made.vin().toString());
        request.put("battery", FactsJson.group(made.facts(), "battery"));
        request.put("vehicle", FactsJson.group(made.facts(), "vehicle"));
        request.put("complaint", made.facts().complaint());
        request.put("batteriesReplacedBefore", made.facts().batteriesReplacedBefore());
        return JsonMapper.builder()
                .enable(SerializationFeature.INDENT_OUTPUT)
                .build()
                .writeValueAsString(request);
    }

    static byte[] gzip(byte[] plain) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (OutputStream packed = new GZIPOutputStream(out)) {
            packed.write(plain);
        }
        return out.toByteArray();
    }
}
