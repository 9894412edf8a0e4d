-- Views for other packages.

create view assessment_summary with (security_invoker = true) as
select id, case_id, assessed_at, edition, leaning, battery_verdict, battery_reason, first_cause, probability, body
  from assessment;

-- runs over the archive that have not ended
create view open_reassessment with (security_invoker = true) as
select id, mode, state, requested_at from reassessment where state in ('queued', 'running', 'paused');
