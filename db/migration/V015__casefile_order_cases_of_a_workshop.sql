-- A workshop's list goes by the moment of opening. Kept beside the workshop, so that an index has its cases in that order:
-- before, the list of a workshop with a hundredth of all cases walked thousands of other ones. The moment never changes.

alter table case_workshop add column opened_at timestamptz;
update case_workshop w set opened_at = c.opened_at from case_file c where c.id = w.case_id;
alter table case_workshop alter column opened_at set not null;

create function case_workshop_knows_opening() returns trigger language plpgsql as $$
begin
    select c.opened_at into new.opened_at from case_file c where c.id = new.case_id;
    return new;
end
$$;
create trigger case_workshop_opening before insert on case_workshop
    for each row execute function case_workshop_knows_opening();

create function case_opening_stands() returns trigger language plpgsql as $$
begin
    raise exception 'the moment of opening is kept: case % was opened at %', old.number, old.opened_at
        using errcode = 'restrict_violation';
end
$$;
create trigger case_file_opening_stands before update of opened_at on case_file
    for each row when (old.opened_at is distinct from new.opened_at) execute function case_opening_stands();

create index case_workshop_newest on case_workshop (workshop_id, opened_at desc, case_id desc);
