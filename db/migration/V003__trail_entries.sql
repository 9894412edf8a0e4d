-- The audit trail: who did what to which subject, and when. Each entry holds the hash of the previous one, so that a change
-- made outside the server can be detected.

create table trail_entry (
    position       bigint primary key check (position > 0),
    happened_at    timestamptz not null,
    actor          actor_name not null,
    role           user_role not null,
    workshop       uuid,
    act            text not null check (act <> ''),
    subject        text not null check (subject <> ''),
    details        text not null check (details is json object),
    previous_hash  sha256_hex not null,
    hash           sha256_hex not null unique,
    check ((role = 'WORKSHOP') = (workshop is not null))
);

create index trail_entry_subject on trail_entry (subject, position);
create index trail_entry_by_day on trail_entry using brin (happened_at);

call make_append_only('trail_entry');
