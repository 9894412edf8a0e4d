-- The audit trail: who did what to which subject, and when. Each entry holds the hash of the previous one, so that a change
-- made outside the server can be detected.

create table trail_entry (
    position       bigint primary key check (position > 0),
    happened_at    timestamptz not null,
    actor          text not null check (actor <> ''),
    role           text not null check (role in ('WORKSHOP', 'CLERK', 'AUDITOR', 'ADMIN')),
    workshop       uuid,
    act            text not null check (act <> ''),
    subject        text not null check (subject <> ''),
    details        text not null check (details is json object),
    previous_hash  char(64) not null check (previous_hash ~ '^[0-9a-f]{64}$'),
    hash           char(64) not null unique check (hash ~ '^[0-9a-f]{64}$'),
    check ((role = 'WORKSHOP') = (workshop is not null))
);

create index trail_entry_subject on trail_entry (subject, position);
create index trail_entry_by_day on trail_entry using brin (happened_at);

call make_append_only('trail_entry');
