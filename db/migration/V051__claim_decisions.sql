-- Decisions with everything they are based on: the assessment by id and digest, its edition, and the evidence
-- by digest. A decision can be justified years later, whatever is assessed since.

-- Limits above which a second person has to confirm a decision.
create table claim_limit (
    ordinal   bigint generated always as identity primary key,
    currency  currency_code not null,
    -- what one person may grant; null for no limit
    amount    numeric(12, 2) check (amount >= 0),
    reason    reason_text not null,
    set_at    timestamptz not null,
    set_by    actor_name not null
);

create index claim_limit_in_force on claim_limit (currency, ordinal desc);

-- Decisions above the limit, before confirmation.
create table claim_proposal (
    claim_id           uuid not null references claim (id),
    -- version of the claim after the proposal; the proposal is pending while the claim has this version
    version            bigint not null,
    kind               text not null check (kind in ('approved', 'declined', 'goodwill')),
    amount             numeric(12, 2) not null check (amount >= 0),
    limit_amount       numeric(12, 2) not null check (amount > limit_amount),
    reason             reason_text not null,
    proposed_at        timestamptz not null,
    proposed_by        actor_name not null,
    assessment_id      uuid not null references assessment (id),
    assessment_sha256  sha256_hex not null,
    edition            text not null check (edition <> ''),
    leaning            text not null check (leaning <> ''),
    against_leaning    boolean not null,
    primary key (claim_id, version),
    foreign key (claim_id, version) references claim_step (claim_id, version),
    check (not against_leaning or length(reason) >= 40)
);

create table claim_decision (
    claim_id           uuid primary key references claim (id),
    version            bigint not null,
    kind               text not null check (kind in ('approved', 'declined', 'goodwill')),
    -- amount paid, in the currency of the claim
    amount             numeric(12, 2) not null check (amount >= 0 and (amount = 0) = (kind = 'declined')),
    reason             reason_text not null,
    decided_at         timestamptz not null,
    decided_by         actor_name not null,
    assessment_id      uuid not null references assessment (id),
    assessment_sha256  sha256_hex not null,
    edition            text not null check (edition <> ''),
    leaning            text not null check (leaning <> ''),
    against_leaning    boolean not null,
    -- the limit in force; above it the decision was proposed by one person and confirmed by another
    limit_amount       numeric(12, 2),
    proposed_at        timestamptz,
    confirmed_by       actor_name,
    foreign key (claim_id, version) references claim_step (claim_id, version),
    check (not against_leaning or length(reason) >= 40),
    constraint claim_decision_second_person check (
        (confirmed_by is null) = (proposed_at is null) and confirmed_by is distinct from decided_by
        and (limit_amount is null or amount <= limit_amount or confirmed_by is not null))
);

create table claim_decision_evidence (
    claim_id     uuid not null references claim_decision (claim_id),
    evidence_id  uuid not null references evidence (id),
    sha256       sha256_hex not null,
    primary key (claim_id, evidence_id)
);

-- The letter and the report of a decision, byte for byte as the workshop received them; empty when they are erased.
create table claim_document (
    claim_id    uuid not null references claim_decision (claim_id),
    kind        text not null check (kind in ('letter', 'report')),
    sha256      sha256_hex not null,
    bytes       bytea not null check (encode(sha256(bytes), 'hex') = sha256 or bytes = ''),
    printed_at  timestamptz not null,
    primary key (claim_id, kind)
);

-- a PDF is compressed already
alter table claim_document alter column bytes set storage external;

call make_append_only('claim_limit');
call make_append_only('claim_proposal');
call make_append_only('claim_decision');
call make_append_only('claim_decision_evidence');
call make_append_only('claim_document');

call restrict_rows('claim_proposal', 'sees_claim(claim_id)');
call restrict_rows('claim_decision', 'sees_claim(claim_id)');
call restrict_rows('claim_decision_evidence', 'sees_claim(claim_id)');
call restrict_rows('claim_document', 'sees_claim(claim_id)');
