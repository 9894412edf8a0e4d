-- The claims of one workshop by amount, alone and of one state: sorted anew for each page, those of a large workshop took longer
-- than a page may.

create index claim_desk_workshop_amount on claim_desk (workshop_id, amount, ordinal);
create index claim_desk_workshop_state_amount on claim_desk (workshop_id, state, amount, ordinal);
create index claim_desk_workshop_state_since on claim_desk (workshop_id, state, waiting_since, ordinal);
create index claim_desk_workshop_state_rank on claim_desk (workshop_id, state, rank, ordinal);
