-- Lists of approved claims that the distributor recovers from a supplier, kept with their bytes, and the supplier's answer for
-- each claim. A claim is in at most one live list; withdrawing a list releases its claims.

create sequence recovery_ordinal as bigint;

create table recovery (
    id                uuid primary key,
    number            text not null unique check (number ~ '^R-[0-9]{5,}$'),
    supplier          text not null references supplier (code),
    -- by the catalogue when the list was made
    supplier_name     text not null check (supplier_name <> ''),
    currency          currency_code not null,
    amount            numeric(14, 2) not null check (amount > 0),
    made_at           timestamptz not null,
    made_by           actor_name not null,
    pdf               bytea not null,
    pdf_sha256        sha256_hex not null,
    csv               bytea not null,
    csv_sha256        sha256_hex not null,
    withdrawn_at      timestamptz,
    withdrawn_by      text,
    withdrawn_reason  reason_text,
    check (num_nulls(withdrawn_at, withdrawn_by, withdrawn_reason) in (0, 3))
);

create table recovery_claim (
    recovery_id     uuid not null references recovery (id),
    position        integer not null check (position > 0),
    claim_id        uuid not null references claim (id),
    case_number     text not null,
    battery_serial  text not null,
    -- by the catalogue when the list was made
    type            text not null references battery_type (code),
    batch           text not null,
    decided_on      date not null,
    amount          numeric(12, 2) not null check (amount > 0),
    -- false after the list was withdrawn
    live            boolean not null,
    primary key (recovery_id, position)
);

create unique index recovery_claim_once on recovery_claim (claim_id) where live;

create table recovery_answer (
    recovery_id  uuid not null,
    position     integer not null,
    -- the highest is current; a correction is a new row
    ordinal      integer not null check (ordinal > 0),
    outcome      text not null check (outcome in ('credited', 'refused')),
    amount       numeric(12, 2) check (amount > 0),
    answered_on  date not null,
    reason       reason_text,
    recorded_at  timestamptz not null,
    recorded_by  actor_name not null,
    primary key (recovery_id, position, ordinal),
    foreign key (recovery_id, position) references recovery_claim (recovery_id, position),
    check ((outcome = 'credited') = (amount is not null)),
    check (outcome = 'credited' or reason is not null),
    check (ordinal = 1 or reason is not null)
);

create function recovery_allow_withdrawal_only() returns trigger language plpgsql as $$
declare
    may_change text[] := case tg_table_name
        when 'recovery' then '{withdrawn_at,withdrawn_by,withdrawn_reason}'::text[] else '{live}'::text[] end;
begin
    if tg_op <> 'UPDATE' or to_jsonb(new) - may_change is distinct from to_jsonb(old) - may_change then
        raise exception '% is frozen: % is refused', tg_table_name, tg_op using errcode = 'restrict_violation';
    end if;
    if tg_table_name = 'recovery' and to_jsonb(old) ->> 'withdrawn_at' is not null
            or tg_table_name = 'recovery_claim' and to_jsonb(old) ->> 'live' = 'false' then
        raise exception 'a list is withdrawn once' using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger recovery_withdrawal_only before update or delete on recovery
    for each row execute function recovery_allow_withdrawal_only();
create trigger recovery_no_truncate before truncate on recovery
    for each statement execute function refuse_change();
create trigger recovery_claim_withdrawal_only before update or delete on recovery_claim
    for each row execute function recovery_allow_withdrawal_only();
create trigger recovery_claim_no_truncate before truncate on recovery_claim
    for each statement execute function refuse_change();

call make_append_only('recovery_answer');

-- recoveries from suppliers are the distributor's
call restrict_rows('recovery', 'false');
call restrict_rows('recovery_claim', 'false');
call restrict_rows('recovery_answer', 'false');
