-- Every assessment is kept as it was served, for decisions rest on it: rows are appended, never changed.

create table assessment (
    ordinal          bigint generated always as identity unique,
    id               uuid primary key,
    case_id          uuid not null references case_file (id),
    edition          text not null check (edition <> ''),
    rulebook_sha256  text not null check (rulebook_sha256 ~ '^[0-9a-f]{64}$'),
    input_sha256     text not null check (input_sha256 ~ '^[0-9a-f]{64}$'),
    assessed_at      timestamptz not null,
    leaning          text not null,
    battery_verdict  text not null,
    first_cause      text not null,
    probability      double precision not null check (probability between 0 and 1),
    body             text not null,
    regimes          text not null
);

create index assessment_latest on assessment (case_id, ordinal desc);

create trigger assessment_append_only before update or delete on assessment
    for each row execute function refuse_change();

create trigger assessment_no_truncate before truncate on assessment
    for each statement execute function refuse_change();
