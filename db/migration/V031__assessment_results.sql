-- Every assessment is kept as it was shown, because decisions are based on it.

create table assessment (
    ordinal          bigint generated always as identity unique,
    id               uuid primary key,
    case_id          uuid not null references case_file (id),
    edition          text not null check (edition <> ''),
    rulebook_sha256  sha256_hex not null,
    input_sha256     sha256_hex not null,
    assessed_at      timestamptz not null,
    leaning          text not null,
    battery_verdict  text not null,
    battery_reason   text not null check (battery_reason in ('tested-charged', 'defect', 'wear', 'kind-open', 'too-discharged',
                         'no-test', 'facts-missing', 'conflict')),
    first_cause      text not null,
    probability      double precision not null check (probability between 0 and 1),
    body             text not null,
    regimes          text not null
);

create index assessment_latest on assessment (case_id, ordinal desc);

call make_append_only('assessment');

call restrict_rows('assessment', 'sees_case(case_id)');
