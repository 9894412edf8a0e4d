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
    -- the hash covers this digest over salt and details, not the details, so that the chain still verifies when the details of a
    -- case are erased; the salt is erased with them, so that nobody can try out what they were
    details_sha256 sha256_hex not null,
    salt           text check (salt ~ '^[0-9a-f]{32}$'),
    check (salt is not null or details = '{}'),
    check ((role = 'WORKSHOP') = (workshop is not null))
);

create index trail_entry_subject on trail_entry (subject, position);
create index trail_entry_by_day on trail_entry using brin (happened_at);

call make_append_only('trail_entry');

-- Erases the details of all entries of a subject that have not been erased yet. The erasure itself is an entry of the trail.
create function erase_trail_details(erased_subject text) returns bigint language plpgsql security definer
        set search_path = public, pg_temp as $$
declare
    erased bigint;
begin
    perform set_config('voltdocket.erasing', 'yes', true);
    update trail_entry set details = '{}', salt = null where subject = erased_subject and salt is not null;
    get diagnostics erased = row_count;
    perform set_config('voltdocket.erasing', '', true);
    return erased;
end
$$;

revoke execute on function erase_trail_details(text) from public;
grant execute on function erase_trail_details(text) to voltdocket_staff;
