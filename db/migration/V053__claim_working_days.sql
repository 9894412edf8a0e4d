-- Due dates in working days: Monday to Friday without the listed holidays. A change is a new row; the latest row is current.

create table claim_working_days (
    ordinal      bigint generated always as identity primary key,
    -- working days of the distributor to decide a submitted claim, and of the workshop to answer an evidence request
    decide_days  integer not null check (decide_days between 1 and 250),
    answer_days  integer not null check (answer_days between 1 and 250),
    holidays     date[] not null,
    recorded_at  timestamptz not null,
    recorded_by  actor_name not null
);

call make_append_only('claim_working_days');
