-- Every step of a claim: who took it, when, from where to where, and why. Rows are appended, never changed.

create table claim_step (
    claim_id    uuid not null references claim (id),
    -- version that the claim has after the step
    version     bigint not null check (version > 0),
    taken_at    timestamptz not null,
    taken_by    text not null check (taken_by <> ''),
    role        text not null check (role in ('WORKSHOP', 'CLERK', 'AUDITOR', 'ADMIN')),
    action      text not null check (action in ('submit', 'take', 'ask', 'answer', 'approve', 'decline', 'goodwill',
                    'settle', 'withdraw')),
    from_state  text not null check (from_state <> ''),
    to_state    text not null check (to_state <> from_state),
    reason      text check (length(reason) between 1 and 2000),
    -- what was asked for, as identifiers of evidence or facts
    items       text[] not null default '{}',
    primary key (claim_id, version),
    check ((action = 'ask') = (cardinality(items) > 0))
);

create trigger claim_step_append_only before update or delete on claim_step
    for each row execute function refuse_change();
create trigger claim_step_no_truncate before truncate on claim_step
    for each statement execute function refuse_change();
