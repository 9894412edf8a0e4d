-- Views for other packages.

create view assessment_summary as
select id, case_id, assessed_at, edition, leaning, battery_verdict, battery_reason, first_cause, probability, body from assessment;
