package org.voltdocket.notice.finder;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.BatteryTest;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.evidence.EvidenceArchive;
import org.voltdocket.evidence.EvidenceItem;
import org.voltdocket.notice.FinderResult;

/** Computes and stores the values by which items of evidence are compared, once for each item. */
@Component
class EvidenceHashes {

    private final EvidenceArchive archive;
    private final JdbcClient db;

    EvidenceHashes(EvidenceArchive archive, JdbcClient db) {
        this.archive = archive;
        this.db = db;
    }

    /** @param fullValue the complete value, if {@code value} is a part of it */
    record Hash(String method, String value, String fullValue) {}

    /** Another item with a value in common. */
    record Alike(UUID evidenceId, FinderResult.Other other, String fileName, String fullValue) {}

    void take(EvidenceItem item) {
        if (!of(item.id()).isEmpty()) {
            return;
        }
        List<Hash> hashes = new ArrayList<>();
        hashes.add(new Hash("bytes", item.sha256().hex(), item.sha256().hex()));
        if (item.kind() == EvidenceKind.BATTERY_TEST) {
            archive.reading(item.id()).ifPresent(reading -> test((BatteryTest) reading, hashes));
        }
        if (item.mediaType().startsWith("image/")) {
            photo(item.id())
                    .ifPresent(hash -> PerceptualHash.bands(hash)
                            .forEach(band -> hashes.add(new Hash("photo", band, Long.toUnsignedString(hash)))));
        }
        hashes.forEach(hash -> db.sql("insert into evidence_hash (evidence_id, case_id, method, value, full_value)"
                        + " values (?, ?, ?, ?, ?) on conflict do nothing")
                .params(item.id(), item.caseId(), hash.method(), hash.value(), hash.fullValue())
                .update());
    }

    List<Hash> of(UUID evidenceId) {
        return db.sql(
                        "select method, value, full_value from evidence_hash where evidence_id = ? order by method, value")
                .param(evidenceId)
                .query((row, number) ->
                        new Hash(row.getString("method"), row.getString("value"), row.getString("full_value")))
                .list();
    }

    /** Items with one of these values in cases of other serials, by case number. */
    List<Alike> alike(String method, List<String> values, String serial) {
        return db.sql("""
                        select distinct on (f.number, p.evidence_id) p.evidence_id, p.full_value, f.id, f.number, f.battery_serial,
                            e.file_name
                        from evidence_hash p join case_summary f on f.id = p.case_id join evidence_summary e on e.id = p.evidence_id
                        where p.method = :method and p.value in (:values) and f.battery_serial <> :serial
                        order by f.number, p.evidence_id limit 2000""")
                .param("method", method)
                .param("values", values)
                .param("serial", serial)
                .query((row, number) -> new Alike(
                        row.getObject("evidence_id", UUID.class),
                        new FinderResult.Other(
                                row.getObject("id", UUID.class),
                                row.getString("number"),
                                row.getString("battery_serial")),
                        row.getString("file_name"),
                        row.getString("full_value")))
                .list();
    }

    /** The exact readings, and the minute, of an instrument with a serial. */
    private static void test(BatteryTest test, List<Hash> hashes) {
        if (test.instrument() == null || test.instrument().serial() == null) {
            return;
        }
        String instrument = test.instrument().serial();
        if (test.crankingCurrentA() != null && test.internalResistanceMilliohm() != null) {
            String readings = test.restVoltageV() + " V, " + test.crankingCurrentA() + " A, "
                    + test.internalResistanceMilliohm() + " mΩ, " + test.temperatureC() + " °C";
            hashes.add(new Hash("readings", instrument + "|" + readings, instrument + ": " + readings));
        }
        hashes.add(new Hash(
                "moment", minute(instrument, test.takenAt(), 0), test.takenAt().toString()));
    }

    /** @param off minutes before or after */
    static String minute(String instrument, OffsetDateTime at, int off) {
        return instrument + "|" + (Math.floorDiv(at.toEpochSecond(), 60) + off);
    }

    private OptionalLong photo(UUID evidenceId) {
        try {
            Path file = Files.createTempFile("voltdocket-photo", null);
            try {
                try (OutputStream out = Files.newOutputStream(file)) {
                    archive.writeContent(evidenceId, out);
                }
                return PerceptualHash.of(file);
            } finally {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
