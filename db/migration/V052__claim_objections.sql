-- Objections of workshops to a decision, and the answers of the distributor. Neither changes the state of the claim.

create table claim_objection (
    ordinal   bigint generated always as identity unique,
    id        uuid primary key,
    claim_id  uuid not null references claim (id),
    made_at   timestamptz not null,
    made_by   actor_name not null,
    reason    reason_text not null
);

create index claim_objection_of_claim on claim_objection (claim_id, ordinal);

create table claim_objection_answer (
    objection_id  uuid primary key references claim_objection (id),
    answered_at   timestamptz not null,
    answered_by   actor_name not null,
    answer        reason_text not null
);

call make_append_only('claim_objection');
call make_append_only('claim_objection_answer');

-- answers are reached through their objection, which is restricted
call restrict_rows('claim_objection', 'sees_claim(claim_id)');
