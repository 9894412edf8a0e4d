-- What the desk lists, filters and sorts by, one row a claim, kept by triggers: over joined tables no index serves a filter
-- and an order at once, and counting a million claims for a page takes too long.

create table claim_desk (
    claim_id       uuid primary key references claim (id),
    ordinal        bigint not null unique,
    case_id        uuid not null references case_file (id),
    number         text not null,
    battery_serial text not null,
    vin            text not null,
    workshop_id    uuid not null references workshop (id),
    amount         numeric(12, 2) not null,
    currency       text not null,
    state          text not null,
    version        bigint not null,
    -- when it was handed in; a draft waits since it was opened
    waiting_since  timestamptz not null,
    taken_by       text,
    answered       boolean not null default false,
    due_on         date,
    leaning        text,
    first_cause    text,
    probability    double precision,
    open           boolean not null generated always as (state in ('submitted', 'in-review', 'evidence-asked')) stored,
    -- answered claims come first, then the clearest
    rank           double precision not null
                       generated always as (coalesce(probability, 0) + case when answered then 1 else 0 end) stored
);

create index claim_desk_open_rank on claim_desk (rank, ordinal) where open;
create index claim_desk_open_due on claim_desk (due_on, ordinal) where open;
create index claim_desk_open_since on claim_desk (waiting_since, ordinal) where open;
create index claim_desk_open_amount on claim_desk (amount, ordinal) where open;
create index claim_desk_taker on claim_desk (taken_by, rank, ordinal) where open;
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
create index claim_desk_case on claim_desk (case_id);
create index claim_desk_serial_part on claim_desk using gin (battery_serial gin_trgm_ops);
create index claim_desk_number on claim_desk (number);
create index claim_desk_vin on claim_desk (vin);
create index claim_desk_vin6 on claim_desk (right(vin, 6));
create index claim_desk_vin8 on claim_desk (right(vin, 8));

-- How many there are: sums of small rows. A change adds rows, so that no two transactions wait for one counter; now and then
-- they are folded. Rows without a workshop count all workshops.
create table claim_tally (
    ordinal      bigint generated always as identity primary key,
    workshop_id  uuid references workshop (id),
    state        text not null,
    leaning      text not null,
    n            bigint not null
);

create index claim_tally_workshop on claim_tally (workshop_id);

create function claim_desk_opens() returns trigger language plpgsql as $$
begin
    insert into claim_desk (claim_id, ordinal, case_id, number, battery_serial, vin, workshop_id, amount, currency, state,
            version, waiting_since, leaning, first_cause, probability)
        select new.id, new.ordinal, c.id, c.number, c.battery_serial, c.vin, new.workshop_id, new.amount, new.currency,
            new.state, new.version, new.opened_at, c.leaning, c.first_cause, c.probability
        from case_file c where c.id = new.case_id;
    return null;
end
$$;

create trigger claim_desk_opens after insert on claim for each row execute function claim_desk_opens();

create function claim_desk_steps() returns trigger language plpgsql as $$
begin
    update claim_desk set state = new.to_state, version = new.version, answered = new.action = 'answer',
        waiting_since = case when new.action = 'submit' then new.taken_at else waiting_since end,
        taken_by = case when new.action = 'take' then new.taken_by else taken_by end,
        due_on = null
        where claim_id = new.claim_id;
    return null;
end
$$;

create trigger claim_desk_steps after insert on claim_step for each row execute function claim_desk_steps();

create function claim_desk_stands() returns trigger language plpgsql as $$
begin
    update claim_desk set leaning = new.leaning, first_cause = new.first_cause, probability = new.probability
        where case_id = new.id;
    return null;
end
$$;

create trigger claim_desk_stands after update of leaning, first_cause, probability on case_file
    for each row when ((new.leaning, new.first_cause, new.probability) is distinct from
        (old.leaning, old.first_cause, old.probability)) execute function claim_desk_stands();

create function claim_desk_counts() returns trigger language plpgsql as $$
begin
    if tg_op = 'UPDATE' then
        if (new.state, new.leaning) is not distinct from (old.state, old.leaning) then
            return null;
        end if;
        insert into claim_tally (workshop_id, state, leaning, n) values
            (null, old.state, coalesce(old.leaning, 'none'), -1),
            (old.workshop_id, old.state, coalesce(old.leaning, 'none'), -1);
    end if;
    insert into claim_tally (workshop_id, state, leaning, n) values
        (null, new.state, coalesce(new.leaning, 'none'), 1),
        (new.workshop_id, new.state, coalesce(new.leaning, 'none'), 1);
    return null;
end
$$;

create trigger claim_desk_counts after insert or update on claim_desk for each row execute function claim_desk_counts();

-- claims that are there already
insert into claim_desk (claim_id, ordinal, case_id, number, battery_serial, vin, workshop_id, amount, currency, state, version,
        waiting_since, taken_by, answered, leaning, first_cause, probability)
    select k.id, k.ordinal, c.id, c.number, c.battery_serial, c.vin, k.workshop_id, k.amount, k.currency, k.state, k.version,
        coalesce((select s.taken_at from claim_step s where s.claim_id = k.id and s.action = 'submit'), k.opened_at),
        (select s.taken_by from claim_step s where s.claim_id = k.id and s.action = 'take' order by s.version desc limit 1),
        coalesce((select s.action = 'answer' from claim_step s where s.claim_id = k.id order by s.version desc limit 1), false),
        c.leaning, c.first_cause, c.probability
    from claim k join case_file c on c.id = k.case_id;
