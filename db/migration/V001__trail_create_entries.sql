-- What happened, by whom, to what: kept for good and chained by hashes, so that a change made behind the server's back shows.
create table trail_entry (
    position bigint primary key check (position > 0),
    happened_at timestamptz not null,
    actor text not null check (actor <> ''),
    role text not null check (role in ('WORKSHOP', 'CLERK', 'AUDITOR', 'ADMIN')),
    workshop uuid,
    act text not null check (act <> ''),
    subject text not null check (subject <> ''),
    details text not null check (details is json object),
    previous_hash char(64) not null check (previous_hash ~ '^[0-9a-f]{64}$'),
    hash char(64) not null unique check (hash ~ '^[0-9a-f]{64}$'),
    check ((role = 'WORKSHOP') = (workshop is not null))
);

create index trail_entry_subject on trail_entry (subject, position);

-- Shared by every table that is only ever appended to: create a trigger that calls it.
create function refuse_change() returns trigger language plpgsql as $$
begin
    raise exception '% is append-only: % is refused', tg_table_name, tg_op using errcode = 'restrict_violation';
end
$$;

create trigger trail_entry_append_only before update or delete on trail_entry
    for each row execute function refuse_change();
create trigger trail_entry_no_truncate before truncate on trail_entry
    for each statement execute function refuse_change();
