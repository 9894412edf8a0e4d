-- How the vehicle is used, as the workshop says when it claims, and the reckoning that a decision was made on: terms may
-- be added later, the decision keeps its own.

alter table claim add column use_class text not null default 'private' check (use_class in ('private', 'commercial', 'taxi'));

create function claim_use_stays() returns trigger language plpgsql as $$
begin
    if new.use_class is distinct from old.use_class then
        raise exception 'claim % changes by steps only', old.id using errcode = 'restrict_violation';
    end if;
    return new;
end
$$;

create trigger claim_use_stays before update on claim
    for each row execute function claim_use_stays();

create table claim_decision_warranty (
    claim_id  uuid primary key references claim_decision (claim_id),
    terms_id  uuid references warranty_terms (id),
    body      text not null check (body is json object)
);

create trigger claim_decision_warranty_append_only before update or delete on claim_decision_warranty
    for each row execute function refuse_change();
create trigger claim_decision_warranty_no_truncate before truncate on claim_decision_warranty
    for each statement execute function refuse_change();
