-- A part of a serial is looked for by its sixes of letters: of a million serials the threes are so common that reading their
-- lists took 25 ms, while two or three lists of sixes take 2. Shorter parts go on by threes. No list of what is pending: every
-- search would read through it.

create function serial_sixes(serial text) returns text[] language sql immutable strict parallel safe as $$
    select array(select substr(serial, i, 6) from generate_series(1, length(serial) - 5) i)
$$;

create index case_file_serial_six on case_file using gin (serial_sixes(battery_serial)) with (fastupdate = off);

-- an index of what is reckoned has no statistics until the table is analyzed, and plans would pass it over
analyze case_file;
