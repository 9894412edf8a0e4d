-- Views for other packages.

create view evidence_summary with (security_invoker = true) as
select ordinal, id, case_id, kind, origin, file_name, received_at from evidence;

create view battery_test with (security_invoker = true) as
select e.ordinal, e.id as evidence_id, e.case_id, e.origin, t.reading::jsonb as reading
  from evidence e
  join test_reading t on t.evidence_id = e.id
 where e.kind = 'battery-test';
