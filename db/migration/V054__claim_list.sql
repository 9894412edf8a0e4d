-- Claims as the desk lists, filters and sorts them, one row per claim, maintained by triggers: no index over joined tables
-- serves a filter and an order at once, and counting a million claims for a page takes too long.

create table claim_desk (
    claim_id        uuid primary key references claim (id),
    ordinal         bigint not null unique,
    case_id         uuid not null references case_file (id),
    number          text not null,
    battery_serial  text not null,
    vin             text not null,
    workshop_id     uuid not null references workshop (id),
    amount          numeric(12, 2) not null,
    currency        text not null,
    state           text not null,
    version         bigint not null,
    -- when it was submitted; for a draft, when it was opened
    waiting_since   timestamptz not null,
    taken_by        text,
    answered        boolean not null default false,
    due_on          date,
    leaning         text,
    first_cause     text,
    probability     double precision,
    open            boolean not null generated always as (claim_is_open(state)) stored,
    -- answered claims come first, then those with the highest probability
    rank            double precision not null
                        generated always as (coalesce(probability, 0) + case when answered then 1 else 0 end) stored,
    -- who proposed the decision that waits for a second person
    proposed_by     text,
    -- when the objection that waits for an answer was made
    objected_at     timestamptz
);

create index claim_desk_case on claim_desk (case_id);

-- lists of open claims
create index claim_desk_open_rank on claim_desk (rank, ordinal) where open;
create index claim_desk_open_due on claim_desk (due_on, ordinal) where open;
create index claim_desk_open_since on claim_desk (waiting_since, ordinal) where open;
create index claim_desk_open_amount on claim_desk (amount, ordinal) where open;
create index claim_desk_open_workshop on claim_desk (workshop_id, rank, ordinal) where open;
create index claim_desk_taker on claim_desk (taken_by, rank, ordinal) where open;
create index claim_desk_proposed on claim_desk (rank, ordinal) where proposed_by is not null;
create index claim_desk_objected on claim_desk (rank, ordinal) where objected_at is not null;

-- lists of all claims, by filter and order
create index claim_desk_rank on claim_desk (rank, ordinal);
create index claim_desk_since on claim_desk (waiting_since, ordinal);
create index claim_desk_amount on claim_desk (amount, ordinal);
create index claim_desk_state_rank on claim_desk (state, rank, ordinal);
create index claim_desk_state_since on claim_desk (state, waiting_since, ordinal);
create index claim_desk_state_amount on claim_desk (state, amount, ordinal);
create index claim_desk_cause on claim_desk (first_cause, rank, ordinal);
create index claim_desk_leaning on claim_desk (leaning, rank, ordinal);
create index claim_desk_workshop on claim_desk (workshop_id, rank, ordinal);
create index claim_desk_workshop_since on claim_desk (workshop_id, waiting_since, ordinal);
create index claim_desk_workshop_amount on claim_desk (workshop_id, amount, ordinal);
create index claim_desk_workshop_state_rank on claim_desk (workshop_id, state, rank, ordinal);
create index claim_desk_workshop_state_since on claim_desk (workshop_id, state, waiting_since, ordinal);
create index claim_desk_workshop_state_amount on claim_desk (workshop_id, state, amount, ordinal);

-- search, by the conditions of V011__casefile_search.sql
create index claim_desk_number on claim_desk (number);
create index claim_desk_vin on claim_desk (vin);
create index claim_desk_vin6 on claim_desk (right(vin, 6));
create index claim_desk_vin8 on claim_desk (right(vin, 8));
create index claim_desk_serial on claim_desk (battery_serial text_pattern_ops);
create index claim_desk_serial_end on claim_desk (reverse(battery_serial) text_pattern_ops);
create index claim_desk_serial_part on claim_desk using gin (battery_serial gin_trgm_ops);
create index claim_desk_serial_six on claim_desk using gin (serial_sixes(battery_serial)) with (fastupdate = off);

-- Number of claims by workshop, state and leaning, as sums of n. A change adds rows, so that no two transactions wait for one
-- counter; merge_claim_counts() merges them from time to time. Rows without a workshop count all workshops.
create table claim_count_change (
    ordinal      bigint generated always as identity primary key,
    workshop_id  uuid references workshop (id),
    state        text not null,
    leaning      text not null,
    n            bigint not null
);

create index claim_count_change_workshop on claim_count_change (workshop_id);

-- One statement: readers see either the rows before or the sums after it. Rows that another node merges are skipped.
create function merge_claim_counts() returns void language sql as $$
    with merged as (delete from claim_count_change where ordinal in (
            select ordinal from claim_count_change order by ordinal limit 50000 for update skip locked)
        returning workshop_id, state, leaning, n)
    insert into claim_count_change (workshop_id, state, leaning, n)
        select workshop_id, state, leaning, sum(n) from merged group by workshop_id, state, leaning having sum(n) <> 0
$$;

create function claim_desk_count() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if (new.state, new.leaning) is not distinct from (old.state, old.leaning) then
            return null;
        end if;
        insert into claim_count_change (workshop_id, state, leaning, n) values
            (null, old.state, coalesce(old.leaning, 'none'), -1),
            (old.workshop_id, old.state, coalesce(old.leaning, 'none'), -1);
    end if;
    insert into claim_count_change (workshop_id, state, leaning, n) values
        (null, new.state, coalesce(new.leaning, 'none'), 1),
        (new.workshop_id, new.state, coalesce(new.leaning, 'none'), 1);
    return null;
end
$$;

create trigger claim_desk_count after insert or update on claim_desk for each row execute function claim_desk_count();

create function claim_desk_add() returns trigger language plpgsql as $$
begin
    insert into claim_desk (claim_id, ordinal, case_id, number, battery_serial, vin, workshop_id, amount, currency, state,
            version, waiting_since, leaning, first_cause, probability)
        select new.id, new.ordinal, c.id, c.number, c.battery_serial, c.vin, new.workshop_id, new.amount, new.currency,
            new.state, new.version, new.opened_at, c.leaning, c.first_cause, c.probability
        from case_summary c where c.id = new.case_id;
    return null;
end
$$;

create trigger claim_desk_add after insert on claim for each row execute function claim_desk_add();

create function claim_desk_apply_step() returns trigger language plpgsql as $$
begin
    update claim_desk set state = new.to_state, version = new.version, answered = new.action = 'answer',
        waiting_since = case when new.action = 'submit' then new.taken_at else waiting_since end,
        taken_by = case when new.action = 'take' then new.taken_by else taken_by end,
        proposed_by = case when new.to_state = new.from_state and new.action <> 'refuse' then new.taken_by end,
        due_on = null
        where claim_id = new.claim_id;
    return null;
end
$$;

create trigger claim_desk_step after insert on claim_step for each row execute function claim_desk_apply_step();

create function claim_desk_apply_assessment() returns trigger language plpgsql as $$
begin
    update claim_desk set leaning = new.leaning, first_cause = new.first_cause, probability = new.probability
        where case_id = new.id;
    return null;
end
$$;

create trigger claim_desk_assessment after update of leaning, first_cause, probability on case_file
    for each row when ((new.leaning, new.first_cause, new.probability) is distinct from
        (old.leaning, old.first_cause, old.probability)) execute function claim_desk_apply_assessment();

create function claim_desk_apply_objection() returns trigger language plpgsql as $$
begin
    update claim_desk set objected_at = new.made_at where claim_id = new.claim_id;
    return null;
end
$$;

create trigger claim_desk_objection after insert on claim_objection for each row execute function claim_desk_apply_objection();

create function claim_desk_apply_objection_answer() returns trigger language plpgsql as $$
begin
    update claim_desk d set objected_at = null from claim_objection o where o.id = new.objection_id and d.claim_id = o.claim_id;
    return null;
end
$$;

create trigger claim_desk_objection_answer after insert on claim_objection_answer
    for each row execute function claim_desk_apply_objection_answer();

grant delete on claim_count_change to voltdocket_staff, voltdocket_workshop;

call restrict_rows('claim_desk', 'workshop_id = (select current_workshop()) or sees_case(case_id)');

-- a trigger adds the rows of all workshops; a workshop reads its own
alter table claim_count_change enable row level security;
create policy staff on claim_count_change to voltdocket_staff using (true) with check (true);
create policy workshop_read on claim_count_change for select to voltdocket_workshop using (workshop_id = (select current_workshop()));
create policy workshop_count on claim_count_change for insert to voltdocket_workshop with check (true);
