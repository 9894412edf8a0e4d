-- Indexes for the lists and the search of cases.

create extension if not exists pg_trgm;

-- lists, newest first: all cases, by filter, and of one workshop
create index case_file_newest on case_file (opened_at desc, id desc);
create index case_file_leaning on case_file (leaning, opened_at desc, id desc);
create index case_file_cause on case_file (first_cause, opened_at desc, id desc);
create index case_file_claim on case_file (claim_state, opened_at desc, id desc) where claim_state <> 'none';
create index case_workshop_by_workshop on case_workshop (workshop_id, case_id);
create index case_workshop_newest on case_workshop (workshop_id, opened_at desc, case_id desc);

-- a whole VIN, or its last 6 or 8 characters
create index case_file_vin on case_file (vin);
create index case_file_vin6 on case_file (right(vin, 6));
create index case_file_vin8 on case_file (right(vin, 8));

-- the beginning or end of a serial, or a part of 3 to 5 characters
create index case_file_serial on case_file (battery_serial text_pattern_ops);
create index case_file_serial_end on case_file (reverse(battery_serial) text_pattern_ops);
create index case_file_serial_part on case_file using gin (battery_serial gin_trgm_ops);

-- A part of 6 characters or more is found by its substrings of length 6: over a million serials trigrams are so common that
-- reading their lists took 25 ms, against 2 ms for these. No pending list, because every search would have to read it.
create function serial_sixes(serial text) returns text[] language sql immutable strict parallel safe as $$
    select array(select substr(serial, i, 6) from generate_series(1, length(serial) - 5) i)
$$;

create index case_file_serial_six on case_file using gin (serial_sixes(battery_serial)) with (fastupdate = off);
