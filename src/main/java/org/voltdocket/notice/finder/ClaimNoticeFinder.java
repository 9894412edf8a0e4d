package org.voltdocket.notice.finder;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.notice.FinderResult;
import org.voltdocket.notice.NoticeFinder;
import org.voltdocket.notice.NoticeKind;

/** Finds several submitted claims for one battery, and claims before the sale. */
@Component
class ClaimNoticeFinder implements NoticeFinder {

    private final JdbcClient db;

    ClaimNoticeFinder(JdbcClient db) {
        this.db = db;
    }

    private record Line(UUID caseId, String number, LocalDate opened, String state, String amount) {

        String told() {
            return number + " (" + opened + ", " + state + ", " + amount + ")";
        }
    }

    @Override
    public List<FinderResult> find(CaseFacts file) {
        String serial = file.ref().serial().value();
        List<Line> all = db.sql("""
                        select f.id, f.number, c.opened_at, c.state, c.amount, c.currency
                        from claim_summary c join case_summary f on f.id = c.case_id
                        where f.battery_serial = ? and c.state not in ('draft', 'withdrawn') order by c.ordinal""")
                .param(serial)
                .query((row, number) -> new Line(
                        row.getObject("id", UUID.class),
                        row.getString("number"),
                        row.getObject("opened_at", OffsetDateTime.class)
                                .withOffsetSameInstant(ZoneOffset.UTC)
                                .toLocalDate(),
                        row.getString("state"),
                        row.getBigDecimal("amount").toPlainString() + " " + row.getString("currency")))
                .list();
        List<Line> own = all.stream()
                .filter(line -> line.caseId().equals(file.ref().id()))
                .toList();
        List<FinderResult> found = new ArrayList<>();
        if (!own.isEmpty() && all.size() > 1) {
            found.add(new FinderResult(
                    NoticeKind.SERIAL_CLAIMED_TWICE,
                    serial,
                    List.of(
                            serial,
                            String.join(", ", all.stream().map(Line::told).toList())),
                    all.stream()
                            .filter(line -> !line.caseId().equals(file.ref().id()))
                            .map(line -> new FinderResult.Other(line.caseId(), line.number(), serial))
                            .distinct()
                            .toList()));
        }
        LocalDate sold = file.facts().battery().soldOn();
        own.stream()
                .filter(line -> sold != null && line.opened().isBefore(sold))
                .findFirst()
                .ifPresent(line -> found.add(new FinderResult(
                        NoticeKind.CLAIMED_BEFORE_SALE,
                        serial,
                        List.of(line.opened().toString(), sold.toString()),
                        List.of())));
        return found;
    }
}
