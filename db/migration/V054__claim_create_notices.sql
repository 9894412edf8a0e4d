-- What a person should look at: the same battery claimed twice, the same recording under several serials, and the like.
-- A notice refuses nothing by itself. It is found, may be looked at once with a reason, and is gone when its grounds are;
-- then it stays as it was, and a new one is found should they come back.

create table claim_notice (
    id             uuid primary key,
    case_id        uuid references case_file (id),
    workshop_id    uuid references workshop (id),
    kind           text not null check (kind ~ '^[a-z-]{4,40}$'),
    -- what of the case it is about, such as an item of evidence
    key            text not null check (key <> ''),
    grounds        text[] not null,
    -- numbers of the other cases that it speaks of
    others         text[] not null default '{}',
    found_at       timestamptz not null,
    looked_at      timestamptz,
    looked_by      text,
    looked_reason  text check (length(looked_reason) between 1 and 2000),
    gone_at        timestamptz,
    check (num_nulls(case_id, workshop_id) = 1),
    check (num_nulls(looked_at, looked_by, looked_reason) in (0, 3))
);

create unique index claim_notice_stands on claim_notice (coalesce(case_id, workshop_id), kind, key) where gone_at is null;
create index claim_notice_of_case on claim_notice (case_id);
create index claim_notice_of_workshop on claim_notice (workshop_id);
create index claim_notice_open on claim_notice (found_at desc, id) where looked_at is null and gone_at is null;

create function claim_notice_is_kept() returns trigger language plpgsql as $$
begin
    if tg_op <> 'UPDATE' then
        raise exception 'notices are kept: % is refused', tg_op using errcode = 'restrict_violation';
    end if;
    if to_jsonb(new) - '{looked_at,looked_by,looked_reason,gone_at}'::text[]
            is distinct from to_jsonb(old) - '{looked_at,looked_by,looked_reason,gone_at}'::text[]
            or (old.looked_at is not null and (new.looked_at, new.looked_by, new.looked_reason)
                is distinct from (old.looked_at, old.looked_by, old.looked_reason))
            or (old.gone_at is not null and new.gone_at is distinct from old.gone_at) then
        raise exception 'a notice is looked at once and goes once; nothing else of it changes'
            using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger claim_notice_kept before update or delete on claim_notice
    for each row execute function claim_notice_is_kept();
create trigger claim_notice_no_truncate before truncate on claim_notice
    for each statement execute function claim_notice_is_kept();

-- What items of evidence are compared by: their bytes, the readings of a test, the minute of an instrument, and of photos a
-- perceptual hash in bands, of which near-duplicates share at least one. Derived, and can be made anew from the evidence.
create table claim_print (
    evidence_id  uuid not null references evidence (id),
    case_id      uuid not null references case_file (id),
    method       text not null check (method in ('bytes', 'readings', 'moment', 'photo')),
    value        text not null,
    -- the whole of it where the value is a part
    told         text not null,
    primary key (evidence_id, method, value)
);

create index claim_print_alike on claim_print (method, value);

-- Cases that are to be looked at anew; written in the transaction of the change.
create table claim_notice_due (
    case_id  uuid primary key references case_file (id),
    since    timestamptz not null,
    -- whether cases that have something in common are to be looked at too
    spread   boolean not null
);
