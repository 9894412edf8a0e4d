-- Keys of original files, and their erasure.

-- The key of each original that is stored encrypted, itself encrypted with the key of the configuration (RFC 3394). A backup leaves
-- out the rows of this table and keeps them in a file of its own for a shorter time, so that an original that is erased here
-- becomes unreadable in older backups too.
create table original_key (
    sha256   text primary key references raw_file (sha256),
    wrapped  bytea not null check (octet_length(wrapped) = 40)
);

revoke update on original_key from voltdocket_staff, voltdocket_workshop;

-- Items whose original is erased. The item, its digest and its reading stay.
create table evidence_erased (
    evidence_id  uuid primary key references evidence (id),
    erased_at    timestamptz not null
);

call make_append_only('evidence_erased');
call restrict_rows('evidence_erased', 'sees_evidence(evidence_id)');

-- Erases the originals of the items of a case that are of the kinds. Bytes that another case needs stay.
create function erase_originals(erased_case uuid, erased_kinds text[]) returns table (sha256 text, place text)
        language plpgsql security definer
        set search_path = public, pg_temp as $$
#variable_conflict use_column
declare
    original record;
begin
    perform set_config('voltdocket.erasing', 'yes', true);
    insert into evidence_erased (evidence_id, erased_at)
        select id, clock_timestamp() from evidence where case_id = erased_case and kind = any (erased_kinds)
        on conflict do nothing;
    for original in
        select distinct f.sha256, f.place
          from raw_file f
          join evidence e on e.sha256 = f.sha256
         where e.case_id = erased_case and f.place <> 'erased'
           and not exists (select from evidence other
                            where other.sha256 = f.sha256
                              and not exists (select from evidence_erased x where x.evidence_id = other.id))
    loop
        delete from original_key where sha256 = original.sha256;
        delete from raw_chunk where sha256 = original.sha256;
        update raw_file set place = 'erased' where sha256 = original.sha256;
        return query select original.sha256::text, original.place::text;
    end loop;
    perform set_config('voltdocket.erasing', '', true);
end
$$;

-- Replaces the free text of a case's items: notes, file names and marks. Digests of notes stay.
create function erase_evidence_texts(erased_case uuid) returns void language plpgsql security definer
        set search_path = public, pg_temp as $$
begin
    perform set_config('voltdocket.erasing', 'yes', true);
    update evidence set note = erased_text(note), file_name = 'erased' where case_id = erased_case;
    update recording_mark set text = 'erased'
        where evidence_id in (select id from evidence where case_id = erased_case);
    perform set_config('voltdocket.erasing', '', true);
end
$$;

-- The same bytes were sent again after their erasure.
create function store_erased_original_again(original text, new_place text) returns void language plpgsql security definer
        set search_path = public, pg_temp as $$
begin
    perform set_config('voltdocket.erasing', 'yes', true);
    update raw_file set place = new_place where sha256 = original and place = 'erased';
    perform set_config('voltdocket.erasing', '', true);
end
$$;

revoke execute on function erase_originals(uuid, text[]), erase_evidence_texts(uuid) from public;
grant execute on function erase_originals(uuid, text[]), erase_evidence_texts(uuid) to voltdocket_staff;
