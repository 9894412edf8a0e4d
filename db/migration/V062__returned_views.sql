-- Views for other packages.

-- batteries with a case and an outcome, the latest of each
create view returned_result with (security_invoker = true) as
select r.ordinal, r.id as return_id, r.number, r.battery_serial, r.supplier, r.type, r.batch, k.case_id, k.assessment_id,
       o.ordinal as outcome_ordinal, o.outcome, o.reason as outcome_reason, o.given_at, o.given_by
  from returned_battery r
  join lateral (select * from returned_outcome x where x.return_id = r.id order by x.ordinal desc limit 1) o on true
  join lateral (select * from returned_case x where x.return_id = r.id order by x.ordinal desc limit 1) k on true;

-- all outcomes of a case, with the assessment before the bench test
create view returned_case_outcome with (security_invoker = true) as
select k.case_id, k.return_id, k.assessment_id, o.ordinal as outcome_ordinal, o.outcome
  from returned_case k
  join returned_outcome o on o.return_id = k.return_id;

create view bench_evidence with (security_invoker = true) as
select return_id, evidence_id from returned_evidence;
