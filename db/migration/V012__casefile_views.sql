-- Views for other packages.

create view case_summary with (security_invoker = true) as
select id, number, battery_serial, vin, opened_at, opened_workshop, chemistry, charging_control, produced_on, sold_on,
       leaning, battery_verdict, first_cause, probability, assessed_at, claim_state
  from case_file;

-- workshops that can see a case
create view case_participant with (security_invoker = true) as
select case_id, workshop_id from case_workshop;
