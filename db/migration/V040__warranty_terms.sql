-- The warranty of a battery by age, kilometres and use. A change is a new row with the day from which it applies: a claim is
-- computed by the terms in force on the day of sale.

create table warranty_terms (
    ordinal       bigint generated always as identity unique,
    id            uuid primary key,
    -- for one battery type, or for a chemistry if the type has no terms or is unknown
    battery_type  text check (battery_type ~ '^[A-Z0-9._/-]{1,40}$'),
    chemistry     battery_chemistry,
    use_class     vehicle_use not null,
    valid_from    date not null,
    free_months   integer not null check (free_months between 0 and 120),
    mileage_km    integer check (mileage_km between 1 and 3000000),
    reason        reason_text not null,
    recorded_at   timestamptz not null,
    recorded_by   actor_name not null,
    check (num_nonnulls(battery_type, chemistry) = 1)
);

create index warranty_terms_in_force on warranty_terms (use_class, battery_type, chemistry, valid_from desc, ordinal desc);

-- After the free months this percentage is paid up to the end of a month of the battery's life, counted from 1.
create table warranty_pro_rata (
    terms_id       uuid not null references warranty_terms (id),
    through_month  integer not null check (through_month between 1 and 240),
    percent        numeric(5, 2) not null check (percent > 0 and percent < 100),
    primary key (terms_id, through_month)
);

call make_append_only('warranty_terms');
call make_append_only('warranty_pro_rata');
