-- Decisions that contradict the bench are reviewed by a clerk. The review changes nothing of the decision.

create table decision_review (
    ordinal          bigint generated always as identity primary key,
    claim_id         uuid not null references claim (id),
    -- the outcome that was reviewed; a later outcome needs a new review
    outcome_ordinal  bigint not null references returned_outcome (ordinal),
    finding          text not null check (finding in ('stands', 'was-wrong')),
    reason           reason_text not null,
    reviewed_at      timestamptz not null,
    reviewed_by      actor_name not null
);

create index decision_review_of_claim on decision_review (claim_id, ordinal desc);

call make_append_only('decision_review');

-- reviews are the distributor's
call restrict_rows('decision_review', 'false');
