-- Append-only tables. Evidence, assessments, decisions and the trail are never changed; a correction is a new row.

create function refuse_change() returns trigger language plpgsql as $$
begin
    raise exception '% is append-only: % is refused', tg_table_name, tg_op using errcode = 'restrict_violation';
end
$$;

-- Refuses UPDATE, DELETE and TRUNCATE on a table. A migration calls it for each append-only table of its package.
create procedure make_append_only(append_only_table regclass) language plpgsql as $$
begin
    execute format('create trigger %I before update or delete on %s for each row execute function refuse_change()',
        append_only_table || '_append_only', append_only_table);
    execute format('create trigger %I before truncate on %s for each statement execute function refuse_change()',
        append_only_table || '_no_truncate', append_only_table);
end
$$;
