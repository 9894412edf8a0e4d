package org.voltdocket.casefile;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.RowMapper;
import org.voltdocket.diagnosis.BatteryVerdict;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Leaning;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Vin;

/** Reads the columns that a list shows. */
enum LineMapper implements RowMapper<CaseLine> {
    INSTANCE;

    static final String COLUMNS = "c.id, c.number, c.battery_serial, c.vin, c.opened_workshop, c.opened_at, c.leaning,"
            + " c.battery_verdict, c.first_cause, c.probability, c.assessed_at, c.claim_state";

    @Override
    public CaseLine mapRow(ResultSet row, int rowNum) throws SQLException {
        CaseRef ref = new CaseRef(
                row.getObject("id", UUID.class),
                new CaseNumber(row.getString("number")),
                new BatterySerial(row.getString("battery_serial")),
                new Vin(row.getString("vin")),
                Optional.ofNullable(row.getObject("opened_workshop", UUID.class)));
        return new CaseLine(
                ref, row.getTimestamp("opened_at").toInstant(), standing(row), row.getString("claim_state"));
    }

    private static Optional<Standing> standing(ResultSet row) throws SQLException {
        String leaning = row.getString("leaning");
        return leaning == null
                ? Optional.empty()
                : Optional.of(new Standing(
                        Leaning.of(leaning),
                        BatteryVerdict.of(row.getString("battery_verdict")),
                        Cause.of(row.getString("first_cause")),
                        row.getDouble("probability"),
                        row.getTimestamp("assessed_at").toInstant()));
    }
}
