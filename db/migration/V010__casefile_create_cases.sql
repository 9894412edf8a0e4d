-- One case per battery and vehicle. Facts are columns, not a document, so that the schema can hold their ranges.
-- The standing columns repeat what the latest assessment says, for lists and filters; the assessments are the truth.

create extension if not exists pg_trgm;

create sequence case_ordinal as bigint minvalue 0 start 1 maxvalue 887503680;

create table case_file (
    id                    uuid primary key,
    number                text not null unique check (number ~ '^V-[0-9A-Z]{3}-[0-9A-Z]{3}-[0-9A-Z]$'),
    battery_serial        text not null check (battery_serial ~ '^[A-Z0-9./-]{4,40}$'),
    vin                   text not null check (vin ~ '^[A-HJ-NPR-Z0-9]{17}$'),
    opened_at             timestamptz not null,
    opened_by             text not null check (opened_by <> ''),
    opened_workshop       uuid references workshop (id),

    chemistry             text check (chemistry in ('flooded', 'efb', 'agm', 'gel')),
    capacity_ah           double precision check (capacity_ah between 1 and 400),
    rated_cranking_a      double precision check (rated_cranking_a between 20 and 3000),
    cranking_standard     text check (cranking_standard in ('EN', 'SAE', 'IEC', 'DIN', 'JIS')),
    produced_on           date,
    sold_on               date check (sold_on >= produced_on),
    fitted_on             date check (fitted_on >= produced_on),
    fitted_odometer_km    double precision check (fitted_odometer_km between 0 and 3000000),
    charging_control      text check (charging_control in ('conventional', 'managed', 'unknown')),
    stop_start            boolean,
    required_chemistry    text check (required_chemistry in ('flooded', 'efb', 'agm', 'gel')),
    required_capacity_ah  double precision check (required_capacity_ah between 1 and 400),
    odometer_km           double precision check (odometer_km between 0 and 3000000),
    complaint             text check (length(complaint) between 1 and 4000),
    replaced_before       integer check (replaced_before between 0 and 20),
    version               bigint not null default 0 check (version >= 0),

    leaning               text check (leaning in ('battery-side', 'vehicle-side', 'usage-side', 'no-fault-seen', 'open', 'contradictory')),
    battery_verdict       text check (battery_verdict in ('sound', 'recharge-and-repeat', 'worn', 'defective', 'undetermined')),
    first_cause           text,
    probability           double precision check (probability between 0 and 1),
    assessed_at           timestamptz,
    claim_state           text not null default 'none',

    unique (battery_serial, vin),
    check (num_nulls(leaning, battery_verdict, first_cause, probability, assessed_at) in (0, 5))
);

-- lists: newest first, alone and by filter
create index case_file_newest on case_file (opened_at desc, id desc);
create index case_file_leaning on case_file (leaning, opened_at desc, id desc);
create index case_file_cause on case_file (first_cause, opened_at desc, id desc);
create index case_file_claim on case_file (claim_state, opened_at desc, id desc) where claim_state <> 'none';

-- search: part of a serial, whole VIN, its last 6 or 8
create index case_file_serial_part on case_file using gin (battery_serial gin_trgm_ops);
create index case_file_vin on case_file (vin);
create index case_file_vin6 on case_file (right(vin, 6));
create index case_file_vin8 on case_file (right(vin, 8));
