-- What a workshop asks for a battery. A case has one claim at a time; the state is repeated in case_file for lists.

create table claim (
    ordinal      bigint generated always as identity unique,
    id           uuid primary key,
    case_id      uuid not null references case_file (id),
    workshop_id  uuid not null references workshop (id),
    amount       numeric(12, 2) not null check (amount > 0),
    currency     text not null check (currency ~ '^[A-Z]{3}$'),
    state        text not null default 'draft' check (state in ('draft', 'submitted', 'in-review', 'evidence-asked',
                     'approved', 'declined', 'goodwill', 'settled', 'withdrawn')),
    version      bigint not null default 0 check (version >= 0),
    opened_at    timestamptz not null,
    opened_by    text not null check (opened_by <> '')
);

create unique index claim_one_at_a_time on claim (case_id) where state not in ('settled', 'withdrawn');
create index claim_latest on claim (case_id, ordinal desc);

-- A step moves the state and raises the version by one; all else of a claim stays as it was opened, and an ended one stays.
create function claim_moves_by_steps() returns trigger language plpgsql as $$
begin
    if tg_op <> 'UPDATE' then
        raise exception 'claims are kept: % is refused', tg_op using errcode = 'restrict_violation';
    end if;
    if (new.ordinal, new.id, new.case_id, new.workshop_id, new.amount, new.currency, new.opened_at, new.opened_by)
            is distinct from (old.ordinal, old.id, old.case_id, old.workshop_id, old.amount, old.currency, old.opened_at,
            old.opened_by) or new.version <> old.version + 1 or old.state in ('settled', 'withdrawn') then
        raise exception 'claim % changes by steps only', old.id using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger claim_by_steps before update or delete on claim
    for each row execute function claim_moves_by_steps();
create trigger claim_no_truncate before truncate on claim
    for each statement execute function claim_moves_by_steps();
