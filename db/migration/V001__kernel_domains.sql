-- Rules that several tables share, each defined once.

create domain reason_text as text check (length(value) between 1 and 2000);

create domain note_text as text check (length(value) between 1 and 4000);

-- name of the account, or of the system, that did something
create domain actor_name as text check (value <> '');

create domain user_role as text check (value in ('WORKSHOP', 'CLERK', 'AUDITOR', 'ADMIN'));

create domain sha256_hex as text check (value ~ '^[0-9a-f]{64}$');

-- ISO 4217
create domain currency_code as text check (value ~ '^[A-Z]{3}$');

create domain battery_serial as text check (value ~ '^[A-Z0-9./-]{4,40}$');

-- code of a supplier or of a battery type
create domain product_code as text check (value ~ '^[A-Z0-9][A-Z0-9._-]{0,29}$');

create domain battery_chemistry as text check (value in ('flooded', 'efb', 'agm', 'gel'));

create domain cranking_standard as text check (value in ('EN', 'SAE', 'IEC', 'DIN', 'JIS'));

create domain cranking_current_a as double precision check (value between 20 and 3000);

create domain capacity_ah as double precision check (value between 1 and 400);

create domain odometer_km as double precision check (value between 0 and 3000000);

-- use of the vehicle, as the warranty terms distinguish it
create domain vehicle_use as text check (value in ('private', 'commercial', 'taxi'));
