-- The desk shows which decisions wait for a second person, and whose they are: who proposed one cannot confirm it.

alter table claim_desk add column proposed_by text;
create index claim_desk_proposed on claim_desk (rank, ordinal) where proposed_by is not null;

create or replace function claim_desk_steps() returns trigger language plpgsql as $$
begin
    update claim_desk set state = new.to_state, version = new.version, answered = new.action = 'answer',
        waiting_since = case when new.action = 'submit' then new.taken_at else waiting_since end,
        taken_by = case when new.action = 'take' then new.taken_by else taken_by end,
        proposed_by = case when new.to_state = new.from_state and new.action <> 'refuse' then new.taken_by end,
        due_on = null
        where claim_id = new.claim_id;
    return null;
end
$$;

update claim_desk d set proposed_by = c.proposed_by from claim c where c.id = d.claim_id and c.proposed_by is not null;
