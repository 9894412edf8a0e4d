-- The warranty calculation that a decision is based on.

create table warranty_calculation (
    claim_id  uuid primary key references claim_decision (claim_id),
    terms_id  uuid references warranty_terms (id),
    body      text not null check (body is json object)
);

call make_append_only('warranty_calculation');

call restrict_rows('warranty_calculation', 'sees_claim(claim_id)');
