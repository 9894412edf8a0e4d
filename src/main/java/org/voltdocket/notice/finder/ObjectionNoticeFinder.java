package org.voltdocket.notice.finder;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.notice.FinderResult;
import org.voltdocket.notice.NoticeFinder;
import org.voltdocket.notice.NoticeKind;

/** Finds objections that are not answered. */
@Component
class ObjectionNoticeFinder implements NoticeFinder {

    private final JdbcClient db;

    ObjectionNoticeFinder(JdbcClient db) {
        this.db = db;
    }

    @Override
    public List<FinderResult> find(CaseFacts file) {
        return db.sql("select id, made_at, reason from open_objection where case_id = ? order by ordinal")
                .param(file.ref().id())
                .query((row, number) -> new FinderResult(
                        NoticeKind.DECISION_OBJECTED_TO,
                        row.getString("id"),
                        List.of(
                                row.getObject("made_at", OffsetDateTime.class)
                                        .withOffsetSameInstant(ZoneOffset.UTC)
                                        .toLocalDate()
                                        .toString(),
                                row.getString("reason")),
                        List.of()))
                .list();
    }
}
