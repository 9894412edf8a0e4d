-- By when a claim is to be decided or answered: so many working days, Monday to Friday without the holidays listed. A change
-- is a new row; the last one counts.

create table claim_working_days (
    ordinal      bigint generated always as identity primary key,
    -- working days for the distributor after a claim came to it, and for the workshop after it was asked
    decide_days  integer not null check (decide_days between 1 and 250),
    answer_days  integer not null check (answer_days between 1 and 250),
    holidays     date[] not null,
    recorded_at  timestamptz not null,
    recorded_by  text not null check (recorded_by <> '')
);

create trigger claim_working_days_append_only before update or delete on claim_working_days
    for each row execute function refuse_change();
create trigger claim_working_days_no_truncate before truncate on claim_working_days
    for each statement execute function refuse_change();
