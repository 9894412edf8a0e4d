package org.voltdocket.warranty;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.diagnosis.Chemistry;

/** Warranty terms in PostgreSQL; appended, never changed. */
@Component
class WarrantyTermsRepository {

    private final JdbcClient db;

    WarrantyTermsRepository(JdbcClient db) {
        this.db = db;
    }

    void append(WarrantyTermsEntry terms) {
        db.sql("""
                insert into warranty_terms (id, battery_type, chemistry, use_class, valid_from, free_months, mileage_km, reason,
                    recorded_at, recorded_by) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .param(terms.id())
                .param(terms.batteryType().orElse(null))
                .param(terms.chemistry().map(Chemistry::id).orElse(null))
                .param(terms.use().id())
                .param(terms.validFrom())
                .param(terms.freeMonths())
                .param(terms.mileageKm().orElse(null))
                .param(terms.reason())
                .param(terms.recordedAt().atOffset(ZoneOffset.UTC))
                .param(terms.recordedBy())
                .update();
        terms.proRata()
                .forEach(row -> db.sql(
                                "insert into warranty_pro_rata (terms_id, through_month, percent) values (?, ?, ?)")
                        .param(terms.id())
                        .param(row.throughMonth())
                        .param(row.percent())
                        .update());
    }

    /** The latest that hold on the day, of several for the same day the one recorded last. */
    Optional<WarrantyTermsEntry> inForce(String column, String scope, UseClass use, LocalDate day) {
        return withTables(db.sql(
                                "select * from warranty_terms where " + column
                                        + " = ? and use_class = ? and valid_from <= ? order by valid_from desc, ordinal desc limit 1")
                        .param(scope)
                        .param(use.id())
                        .param(day)
                        .query(WarrantyTermsRepository::row)
                        .list())
                .stream()
                .findFirst();
    }

    /** Every row ever recorded: chemistries first, then types; of each the newest first. */
    List<WarrantyTermsEntry> all() {
        return withTables(db.sql("select * from warranty_terms order by battery_type nulls first, chemistry, use_class,"
                        + " valid_from desc, ordinal desc")
                .query(WarrantyTermsRepository::row)
                .list());
    }

    private List<WarrantyTermsEntry> withTables(List<WarrantyTermsEntry> bare) {
        Map<UUID, List<ProRata>> tables = bare.isEmpty()
                ? Map.of()
                : db
                        .sql("select * from warranty_pro_rata where terms_id = any(?) order by terms_id, through_month")
                        .param(bare.stream().map(WarrantyTermsEntry::id).toArray(UUID[]::new))
                        .query((row, number) -> Map.entry(
                                row.getObject("terms_id", UUID.class),
                                new ProRata(row.getInt("through_month"), row.getBigDecimal("percent"))))
                        .list()
                        .stream()
                        .collect(Collectors.groupingBy(
                                Map.Entry::getKey, Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
        List<WarrantyTermsEntry> whole = new ArrayList<>();
        bare.forEach(terms -> whole.add(new WarrantyTermsEntry(
                terms.id(),
                terms.batteryType(),
                terms.chemistry(),
                terms.use(),
                terms.validFrom(),
                terms.freeMonths(),
                tables.getOrDefault(terms.id(), List.of()),
                terms.mileageKm(),
                terms.reason(),
                terms.recordedAt(),
                terms.recordedBy())));
        return whole;
    }

    private static WarrantyTermsEntry row(ResultSet row, int number) throws SQLException {
        return new WarrantyTermsEntry(
                row.getObject("id", UUID.class),
                Optional.ofNullable(row.getString("battery_type")),
                Optional.ofNullable(row.getString("chemistry")).map(Chemistry::of),
                UseClass.of(row.getString("use_class")),
                row.getObject("valid_from", LocalDate.class),
                row.getInt("free_months"),
                List.of(),
                Optional.ofNullable(row.getObject("mileage_km", Integer.class)),
                row.getString("reason"),
                row.getTimestamp("recorded_at").toInstant(),
                row.getString("recorded_by"));
    }
}
