-- One case per battery and vehicle. Facts are columns, so that the schema can check their ranges.

create sequence case_ordinal as bigint minvalue 0 start 1 maxvalue 887503680;

create table case_file (
    id                    uuid primary key,
    number                text not null unique check (number ~ '^V-[0-9A-Z]{3}-[0-9A-Z]{3}-[0-9A-Z]$'),
    battery_serial        battery_serial not null,
    vin                   text not null check (vin ~ '^[A-HJ-NPR-Z0-9]{17}$'),
    opened_at             timestamptz not null,
    opened_by             actor_name not null,
    opened_workshop       uuid references workshop (id),

    -- facts of battery and vehicle
    chemistry             battery_chemistry,
    capacity_ah           capacity_ah,
    rated_cranking_a      cranking_current_a,
    cranking_standard     cranking_standard,
    produced_on           date,
    sold_on               date check (sold_on >= produced_on),
    fitted_on             date check (fitted_on >= produced_on),
    fitted_odometer_km    odometer_km,
    charging_control      text check (charging_control in ('conventional', 'managed', 'unknown')),
    stop_start            boolean,
    required_chemistry    battery_chemistry,
    required_capacity_ah  capacity_ah,
    odometer_km           odometer_km,
    complaint             note_text,
    replaced_before       integer check (replaced_before between 0 and 20),
    version               bigint not null default 0 check (version >= 0),
    -- when the personal data was erased: the VIN is a pseudonym since, and the case does not change any more
    erased_at             timestamptz,

    -- copied from the latest assessment and claim for lists and filters
    leaning               text check (leaning in ('battery-side', 'vehicle-side', 'usage-side', 'no-fault-seen', 'open', 'contradictory')),
    battery_verdict       text check (battery_verdict in ('sound', 'failed', 'not-judged')),
    first_cause           text,
    probability           double precision check (probability between 0 and 1),
    assessed_at           timestamptz,
    claim_state           text not null default 'none',

    unique (battery_serial, vin),
    check (num_nulls(leaning, battery_verdict, first_cause, probability, assessed_at) in (0, 5))
);

-- case_workshop repeats opened_at, therefore it never changes.
create function case_file_refuse_new_opened_at() returns trigger language plpgsql as $$
begin
    raise exception 'the moment of opening is kept: case % was opened at %', old.number, old.opened_at
        using errcode = 'restrict_violation';
end
$$;

create trigger case_file_opened_at before update of opened_at on case_file
    for each row when (old.opened_at is distinct from new.opened_at) execute function case_file_refuse_new_opened_at();

-- Workshops that can see a case and add evidence: the one that opened it and those added by the distributor.
create table case_workshop (
    case_id      uuid not null references case_file (id),
    workshop_id  uuid not null references workshop (id),
    added_at     timestamptz not null,
    added_by     actor_name not null,
    -- copied from case_file, so that one index finds the newest cases of a workshop
    opened_at    timestamptz not null,
    primary key (case_id, workshop_id)
);

create function case_workshop_copy_opened_at() returns trigger language plpgsql as $$
begin
    select c.opened_at into new.opened_at from case_file c where c.id = new.case_id;
    return new;
end
$$;

create trigger case_workshop_opened_at before insert on case_workshop
    for each row execute function case_workshop_copy_opened_at();

-- Cases whose latest change is not assessed yet. Written in the transaction of the change and removed by the assessment, so
-- that a crash or a failure leaves none out.
create table pending_assessment (
    case_id    uuid primary key references case_file (id),
    since      timestamptz not null,
    failed_at  timestamptz,
    reason     text,
    check (num_nulls(failed_at, reason) in (0, 2))
);

grant delete on pending_assessment to voltdocket_staff, voltdocket_workshop;

-- Whether the current workshop can see a case. Runs with the owner's rights, because case_workshop is restricted by it.
create function sees_case(seen_case uuid) returns boolean language sql stable parallel safe security definer
        set search_path = public, pg_temp as $$
    select exists (select from case_workshop w where w.case_id = seen_case and w.workshop_id = current_workshop())
$$;

call restrict_rows('case_workshop', 'workshop_id = (select current_workshop()) or sees_case(case_id)');
call restrict_rows('case_file', 'opened_workshop = (select current_workshop()) or sees_case(id)');
