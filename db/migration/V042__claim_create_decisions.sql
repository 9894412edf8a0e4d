-- A decision with what it rests on, frozen: the assessment by id and digest, its edition, and the evidence by digest.
-- It must be defensible years later, whatever is assessed since.

create table claim_decision (
    claim_id           uuid primary key references claim (id),
    version            bigint not null,
    kind               text not null check (kind in ('approved', 'declined', 'goodwill')),
    -- what is paid, in the claim's currency
    amount             numeric(12, 2) not null check (amount >= 0 and (amount = 0) = (kind = 'declined')),
    reason             text not null check (length(reason) between 1 and 2000),
    decided_at         timestamptz not null,
    decided_by         text not null check (decided_by <> ''),
    assessment_id      uuid not null references assessment (id),
    assessment_sha256  text not null check (assessment_sha256 ~ '^[0-9a-f]{64}$'),
    edition            text not null check (edition <> ''),
    leaning            text not null check (leaning <> ''),
    against_leaning    boolean not null,
    foreign key (claim_id, version) references claim_step (claim_id, version),
    check (not against_leaning or length(reason) >= 40)
);

create table claim_decision_evidence (
    claim_id     uuid not null references claim_decision (claim_id),
    evidence_id  uuid not null references evidence (id),
    sha256       text not null check (sha256 ~ '^[0-9a-f]{64}$'),
    primary key (claim_id, evidence_id)
);

create trigger claim_decision_append_only before update or delete on claim_decision
    for each row execute function refuse_change();
create trigger claim_decision_no_truncate before truncate on claim_decision
    for each statement execute function refuse_change();
create trigger claim_decision_evidence_append_only before update or delete on claim_decision_evidence
    for each row execute function refuse_change();
create trigger claim_decision_evidence_no_truncate before truncate on claim_decision_evidence
    for each statement execute function refuse_change();
