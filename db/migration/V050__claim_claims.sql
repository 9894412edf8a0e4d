-- Claims of workshops and the steps that change their state. A case has one open claim at a time; case_file repeats its state
-- for lists.

-- the states in which somebody has to act before the decision
create function claim_is_open(state text) returns boolean language sql immutable parallel safe
    return state in ('submitted', 'in-review', 'evidence-asked');

-- the states that no step follows
create function claim_has_ended(state text) returns boolean language sql immutable parallel safe
    return state in ('settled', 'withdrawn');

create table claim (
    ordinal      bigint generated always as identity unique,
    id           uuid primary key,
    case_id      uuid not null references case_file (id),
    workshop_id  uuid not null references workshop (id),
    amount       numeric(12, 2) not null check (amount > 0),
    currency     currency_code not null,
    -- use of the vehicle as stated by the workshop
    use_class    vehicle_use not null default 'private',
    state        text not null default 'draft' check (state in ('draft', 'submitted', 'in-review', 'evidence-asked',
                     'approved', 'declined', 'goodwill', 'settled', 'withdrawn')),
    version      bigint not null default 0 check (version >= 0),
    opened_at    timestamptz not null,
    opened_by    actor_name not null,
    -- when the workshop answered the latest evidence request; null after the next step of a clerk
    answered_at  timestamptz,
    -- who proposed the decision that waits for a second person; null if none waits
    proposed_by  text
);

create unique index claim_one_at_a_time on claim (case_id) where not claim_has_ended(state);
create index claim_latest on claim (case_id, ordinal desc);
create index claim_back on claim (answered_at) where answered_at is not null;

-- A step changes the state and increases the version by one. What was stated when the claim was opened never changes, and a
-- claim that has ended does not change any more.
create function claim_allow_steps_only() returns trigger language plpgsql as $$
begin
    if tg_op <> 'UPDATE' then
        raise exception 'claims are kept: % is refused', tg_op using errcode = 'restrict_violation';
    end if;
    if to_jsonb(new) - '{state,version,answered_at,proposed_by}'::text[]
            is distinct from to_jsonb(old) - '{state,version,answered_at,proposed_by}'::text[]
            or new.version <> old.version + 1 or claim_has_ended(old.state) then
        raise exception 'claim % changes by steps only', old.id using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger claim_steps_only before update or delete on claim
    for each row execute function claim_allow_steps_only();
create trigger claim_no_truncate before truncate on claim
    for each statement execute function refuse_change();

create table claim_step (
    claim_id    uuid not null references claim (id),
    -- version of the claim after the step
    version     bigint not null check (version > 0),
    taken_at    timestamptz not null,
    taken_by    actor_name not null,
    role        user_role not null,
    action      text not null check (action in ('submit', 'take', 'ask', 'answer', 'approve', 'decline', 'goodwill',
                    'confirm', 'refuse', 'settle', 'withdraw')),
    from_state  text not null check (from_state <> ''),
    to_state    text not null,
    reason      reason_text,
    -- requested items: kinds of evidence, names of facts, or free text of the clerk
    items       text[] not null default '{}',
    primary key (claim_id, version),
    -- a proposal and its refusal leave the state as it is
    check (to_state <> from_state or action in ('approve', 'decline', 'goodwill', 'refuse')),
    check ((action = 'ask') = (cardinality(items) > 0))
);

-- Answers of the workshop to requested items.
create table claim_answer (
    ordinal      bigint generated always as identity primary key,
    claim_id     uuid not null,
    -- of the step with the request
    version      bigint not null,
    -- index in the items of that step, from 1
    position     integer not null check (position > 0),
    evidence_id  uuid references evidence (id),
    words        reason_text,
    answered_at  timestamptz not null,
    answered_by  actor_name not null,
    foreign key (claim_id, version) references claim_step (claim_id, version),
    check (num_nonnulls(evidence_id, words) > 0)
);

create index claim_answer_of on claim_answer (claim_id, version, position, ordinal);

call make_append_only('claim_step');
call make_append_only('claim_answer');

create function sees_claim(seen_claim uuid) returns boolean language sql stable parallel safe security definer
        set search_path = public, pg_temp as $$
    select exists (select from claim c where c.id = seen_claim and sees_case(c.case_id))
$$;

call restrict_rows('claim', 'sees_case(case_id)');
call restrict_rows('claim_step', 'sees_claim(claim_id)');
call restrict_rows('claim_answer', 'sees_claim(claim_id)');
