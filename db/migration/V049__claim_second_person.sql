-- Above a set amount a decision waits until a second person confirms it. The limits are kept as they were set; a decision
-- keeps the one that was in force, and the proposal that it confirms.

create table claim_limit (
    ordinal   bigint generated always as identity primary key,
    currency  text not null check (currency ~ '^[A-Z]{3}$'),
    -- what one person may grant; null lifts the limit
    amount    numeric(12, 2) check (amount >= 0),
    reason    text not null check (length(reason) between 1 and 2000),
    set_at    timestamptz not null,
    set_by    text not null check (set_by <> '')
);

create index claim_limit_in_force on claim_limit (currency, ordinal desc);

create trigger claim_limit_append_only before update or delete on claim_limit
    for each row execute function refuse_change();
create trigger claim_limit_no_truncate before truncate on claim_limit
    for each statement execute function refuse_change();

create table claim_proposal (
    claim_id           uuid not null references claim (id),
    -- version that the claim has after the proposal; it waits while the claim has this version
    version            bigint not null,
    kind               text not null check (kind in ('approved', 'declined', 'goodwill')),
    amount             numeric(12, 2) not null check (amount >= 0),
    limit_amount       numeric(12, 2) not null check (amount > limit_amount),
    reason             text not null check (length(reason) between 1 and 2000),
    proposed_at        timestamptz not null,
    proposed_by        text not null check (proposed_by <> ''),
    assessment_id      uuid not null references assessment (id),
    assessment_sha256  text not null check (assessment_sha256 ~ '^[0-9a-f]{64}$'),
    edition            text not null check (edition <> ''),
    leaning            text not null check (leaning <> ''),
    against_leaning    boolean not null,
    primary key (claim_id, version),
    foreign key (claim_id, version) references claim_step (claim_id, version),
    check (not against_leaning or length(reason) >= 40)
);

create trigger claim_proposal_append_only before update or delete on claim_proposal
    for each row execute function refuse_change();
create trigger claim_proposal_no_truncate before truncate on claim_proposal
    for each statement execute function refuse_change();

-- who proposed what waits now, for queues; null where nothing waits
alter table claim add column proposed_by text;

-- a step that proposes or refuses leaves the claim in its state
do $$
declare old text;
begin
    for old in select conname from pg_constraint where conrelid = 'claim_step'::regclass and contype = 'c'
            and (pg_get_constraintdef(oid) like '%to_state <> from_state%' or pg_get_constraintdef(oid) like '%settle%') loop
        execute format('alter table claim_step drop constraint %I', old);
    end loop;
end
$$;
alter table claim_step add constraint claim_step_known check (action in ('submit', 'take', 'ask', 'answer', 'approve',
    'decline', 'goodwill', 'confirm', 'refuse', 'settle', 'withdraw'));
alter table claim_step add constraint claim_step_moves
    check (to_state <> from_state or action in ('approve', 'decline', 'goodwill', 'refuse'));

alter table claim_decision add column limit_amount numeric(12, 2);
alter table claim_decision add column proposed_at timestamptz;
alter table claim_decision add column confirmed_by text check (confirmed_by <> '');
alter table claim_decision add constraint claim_decision_second_person check (
    (confirmed_by is null) = (proposed_at is null) and confirmed_by is distinct from decided_by
    and (limit_amount is null or amount <= limit_amount or confirmed_by is not null));
