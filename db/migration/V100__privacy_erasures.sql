-- Erasure of personal data, and legal holds that prevent it.

create table legal_hold (
    ordinal    bigint generated always as identity primary key,
    case_id    uuid not null references case_file (id),
    reason     reason_text not null,
    placed_at  timestamptz not null,
    placed_by  actor_name not null
);

create index legal_hold_of_case on legal_hold (case_id);

create table legal_hold_release (
    hold         bigint primary key references legal_hold (ordinal),
    reason       reason_text not null,
    released_at  timestamptz not null,
    released_by  actor_name not null
);

-- What was erased of a case, once each. The part "case" includes the others.
create table erasure (
    case_id    uuid not null references case_file (id),
    part       text not null check (part in ('documents', 'originals', 'case')),
    reason     reason_text not null,
    erased_at  timestamptz not null,
    erased_by  actor_name not null,
    -- number of original files whose bytes were removed
    originals  integer not null check (originals >= 0),
    primary key (case_id, part)
);

call make_append_only('legal_hold');
call make_append_only('legal_hold_release');
call make_append_only('erasure');
call restrict_rows('legal_hold', 'false');
call restrict_rows('erasure', 'false');
