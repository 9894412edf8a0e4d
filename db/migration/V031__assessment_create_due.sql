-- Cases whose last change is not assessed yet. Written in the transaction of the change, removed by the assessment,
-- so that what a crash or a failure left behind is found again.

create table assessment_due (
    case_id    uuid primary key references case_file (id),
    since      timestamptz not null,
    failed_at  timestamptz,
    reason     text,
    check (num_nulls(failed_at, reason) in (0, 2))
);
