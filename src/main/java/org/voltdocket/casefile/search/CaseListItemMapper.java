package org.voltdocket.casefile.search;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.RowMapper;
import org.voltdocket.casefile.AssessmentSummary;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CaseReference;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Vin;

/** Reads the columns that a list shows. */
enum CaseListItemMapper implements RowMapper<CaseListItem> {
    INSTANCE;

    static final String COLUMNS = "c.id, c.number, c.battery_serial, c.vin, c.opened_workshop, c.opened_at, c.leaning,"
            + " c.battery_verdict, c.first_cause, c.probability, c.assessed_at, c.claim_state";

    @Override
    public CaseListItem mapRow(ResultSet row, int rowNum) throws SQLException {
        CaseReference ref = new CaseReference(
                row.getObject("id", UUID.class),
                new CaseNumber(row.getString("number")),
                new BatterySerial(row.getString("battery_serial")),
                new Vin(row.getString("vin")),
                Optional.ofNullable(row.getObject("opened_workshop", UUID.class)));
        return new CaseListItem(
                ref, row.getTimestamp("opened_at").toInstant(), standing(row), row.getString("claim_state"));
    }

    private static Optional<AssessmentSummary> standing(ResultSet row) throws SQLException {
        String leaning = row.getString("leaning");
        return leaning == null
                ? Optional.empty()
                : Optional.of(new AssessmentSummary(
                        Leaning.of(leaning),
                        BatteryVerdict.of(row.getString("battery_verdict")),
                        Cause.of(row.getString("first_cause")),
                        row.getDouble("probability"),
                        row.getTimestamp("assessed_at").toInstant()));
    }
}
