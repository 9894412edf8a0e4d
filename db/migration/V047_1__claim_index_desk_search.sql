-- Serials are searched by their beginning or end: over a million of them the parts of three letters are too common, and
-- reading their lists took up to a tenth of a second. The open claims, which are few, get indexes of their own.

drop index claim_desk_serial_part;
create index claim_desk_serial on claim_desk (battery_serial text_pattern_ops);
create index claim_desk_serial_end on claim_desk (reverse(battery_serial) text_pattern_ops);
create index claim_desk_open_serial on claim_desk (battery_serial text_pattern_ops) where open;
create index claim_desk_open_serial_end on claim_desk (reverse(battery_serial) text_pattern_ops) where open;
create index claim_desk_open_workshop on claim_desk (workshop_id, rank, ordinal) where open;
