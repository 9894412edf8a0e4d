-- A workshop may object to a decision, with its reason, and the distributor answers. Both are appended and nothing of them ever
-- changes; neither moves the claim, for a decision stands until another claim is decided.

create table claim_objection (
    ordinal   bigint generated always as identity unique,
    id        uuid primary key,
    claim_id  uuid not null references claim (id),
    made_at   timestamptz not null,
    made_by   text not null check (made_by <> ''),
    reason    text not null check (length(reason) between 1 and 2000)
);

create index claim_objection_of_claim on claim_objection (claim_id, ordinal);

create table claim_objection_answer (
    objection_id  uuid primary key references claim_objection (id),
    answered_at   timestamptz not null,
    answered_by   text not null check (answered_by <> ''),
    answer        text not null check (length(answer) between 1 and 2000)
);

create trigger claim_objection_append_only before update or delete on claim_objection
    for each row execute function refuse_change();
create trigger claim_objection_no_truncate before truncate on claim_objection
    for each statement execute function refuse_change();
create trigger claim_objection_answer_append_only before update or delete on claim_objection_answer
    for each row execute function refuse_change();
create trigger claim_objection_answer_no_truncate before truncate on claim_objection_answer
    for each statement execute function refuse_change();

-- the desk shows which objections wait for an answer
alter table claim_desk add column objected_at timestamptz;
create index claim_desk_objected on claim_desk (rank, ordinal) where objected_at is not null;

create function claim_desk_objects() returns trigger language plpgsql as $$
begin
    update claim_desk set objected_at = new.made_at where claim_id = new.claim_id;
    return null;
end
$$;

create trigger claim_desk_objects after insert on claim_objection for each row execute function claim_desk_objects();

create function claim_desk_hears() returns trigger language plpgsql as $$
begin
    update claim_desk d set objected_at = null from claim_objection o where o.id = new.objection_id and d.claim_id = o.claim_id;
    return null;
end
$$;

create trigger claim_desk_hears after insert on claim_objection_answer for each row execute function claim_desk_hears();
