-- Views for other packages.

-- claims with their decision, if there is one
create view claim_summary with (security_invoker = true) as
select c.ordinal, c.id, c.case_id, c.workshop_id, c.amount, c.currency, c.state, c.opened_at,
       d.kind as decision, d.amount as paid, d.reason as decision_reason, d.decided_at, d.decided_by
  from claim c
  left join claim_decision d on d.claim_id = c.id;

-- objections without an answer
create view open_objection with (security_invoker = true) as
select o.ordinal, o.id, o.claim_id, c.case_id, o.made_at, o.reason
  from claim_objection o
  join claim c on c.id = o.claim_id
 where not exists (select from claim_objection_answer a where a.objection_id = o.id);

-- one row per claim with everything that lists, filters and orders need
create view claim_list with (security_invoker = true) as
select * from claim_desk;

-- numbers of claims, as rows to be summed; without a workshop of all workshops
create view claim_count with (security_invoker = true) as
select workshop_id, state, leaning, n from claim_count_change;
