-- Unusual patterns that a person should look at, such as the same battery claimed twice or the same recording under several
-- serials. A notice refuses nothing. It can be looked at once, with a reason, and it ends when its grounds no longer hold; if
-- they hold again, a new notice is written.

create table claim_notice (
    id             uuid primary key,
    case_id        uuid references case_file (id),
    workshop_id    uuid references workshop (id),
    kind           text not null check (kind ~ '^[a-z-]{4,40}$'),
    -- what it is about within the case, such as an item of evidence
    key            text not null check (key <> ''),
    grounds        text[] not null,
    -- numbers of the other cases involved
    others         text[] not null default '{}',
    found_at       timestamptz not null,
    looked_at      timestamptz,
    looked_by      text,
    looked_reason  reason_text,
    gone_at        timestamptz,
    check (num_nulls(case_id, workshop_id) = 1),
    check (num_nulls(looked_at, looked_by, looked_reason) in (0, 3))
);

create unique index claim_notice_current on claim_notice (coalesce(case_id, workshop_id), kind, key) where gone_at is null;
create index claim_notice_of_case on claim_notice (case_id);
create index claim_notice_of_workshop on claim_notice (workshop_id);
create index claim_notice_open on claim_notice (found_at desc, id) where looked_at is null and gone_at is null;

create function notice_allow_look_and_end_only() returns trigger language plpgsql as $$
begin
    if tg_op <> 'UPDATE' then
        raise exception 'notices are kept: % is refused', tg_op using errcode = 'restrict_violation';
    end if;
    if to_jsonb(new) - '{looked_at,looked_by,looked_reason,gone_at}'::text[]
            is distinct from to_jsonb(old) - '{looked_at,looked_by,looked_reason,gone_at}'::text[]
            or (old.looked_at is not null and (new.looked_at, new.looked_by, new.looked_reason)
                is distinct from (old.looked_at, old.looked_by, old.looked_reason))
            or (old.gone_at is not null and new.gone_at is distinct from old.gone_at) then
        raise exception 'a notice is looked at once and ends once; nothing else of it changes'
            using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger claim_notice_look_and_end_only before update or delete on claim_notice
    for each row execute function notice_allow_look_and_end_only();
create trigger claim_notice_no_truncate before truncate on claim_notice
    for each statement execute function refuse_change();

-- Values by which evidence is compared: its bytes, the readings of a test, the minute of an instrument, and for photos a
-- perceptual hash in bands, of which near-duplicates share at least one. Can be computed again from the evidence.
create table evidence_hash (
    evidence_id  uuid not null references evidence (id),
    case_id      uuid not null references case_file (id),
    method       text not null check (method in ('bytes', 'readings', 'moment', 'photo')),
    value        text not null,
    -- the complete value if value is a part of it
    full_value   text not null,
    primary key (evidence_id, method, value)
);

create index evidence_hash_value on evidence_hash (method, value);

-- Cases to be checked again. Written in the transaction of the change.
create table pending_notice_check (
    case_id  uuid primary key references case_file (id),
    since    timestamptz not null,
    -- whether cases with a value in common are to be checked too
    spread   boolean not null
);

grant delete on pending_notice_check to voltdocket_staff, voltdocket_workshop;

-- notices are the distributor's
call restrict_rows('claim_notice', 'false');
