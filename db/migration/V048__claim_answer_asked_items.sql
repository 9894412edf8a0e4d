-- What a workshop gives to each thing that was asked for. What is asked for stands in claim_step.items, in order: kinds of
-- evidence, names of facts, or the clerk's own words. Answers are appended, never changed.

create table claim_answer (
    ordinal      bigint generated always as identity primary key,
    claim_id     uuid not null,
    -- of the step that asked
    version      bigint not null,
    -- of the thing in that step's items, from 1
    position     integer not null check (position > 0),
    evidence_id  uuid references evidence (id),
    words        text check (length(words) between 1 and 2000),
    answered_at  timestamptz not null,
    answered_by  text not null check (answered_by <> ''),
    foreign key (claim_id, version) references claim_step (claim_id, version),
    check (num_nonnulls(evidence_id, words) > 0)
);

create index claim_answer_of on claim_answer (claim_id, version, position, ordinal);

create trigger claim_answer_append_only before update or delete on claim_answer
    for each row execute function refuse_change();
create trigger claim_answer_no_truncate before truncate on claim_answer
    for each statement execute function refuse_change();

-- An answered claim comes back before those not yet looked at: when it was answered, until the next step of a clerk.
alter table claim add column answered_at timestamptz;
create index claim_back on claim (answered_at) where answered_at is not null;
