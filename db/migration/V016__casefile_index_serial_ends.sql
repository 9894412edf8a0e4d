-- A serial is mostly searched by its beginning or its end; the middle, by parts of three letters, is dear where they are common.

create index case_file_serial on case_file (battery_serial text_pattern_ops);
create index case_file_serial_end on case_file (reverse(battery_serial) text_pattern_ops);
