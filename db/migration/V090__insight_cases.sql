-- One row per case with everything that statistics need, so that all of them use the same definitions: the latest claim that
-- was submitted, its decision, the newest bench outcome with the assessment before the bench test, and the product that the
-- serial belongs to.

create view insight_case with (security_invoker = true) as
select c.id              as case_id,
       c.number,
       c.battery_serial,
       c.vin,
       c.chemistry,
       coalesce(c.charging_control, 'unknown') as charging_control,
       c.sold_on,
       coalesce(c.produced_on, made.produced_on) as produced_on,
       c.leaning,
       c.battery_verdict,
       c.first_cause,
       w.id              as workshop_id,
       w.name            as workshop,
       asked.id          as claim_id,
       asked.state       as claim_state,
       asked.opened_at   as claimed_at,
       asked.amount      as claimed,
       asked.currency,
       asked.decision,
       asked.paid,
       tested.outcome,
       tested.assessment_id as stated_assessment,
       made.type,
       made.batch
  from case_summary c
  left join lateral (select * from claim_summary k
                      where k.case_id = c.id and k.state not in ('draft', 'withdrawn')
                      order by k.ordinal desc limit 1) asked on true
  left join workshop_summary w on w.id = coalesce(asked.workshop_id, c.opened_workshop)
  left join lateral (select o.outcome, o.assessment_id from returned_case_outcome o
                      where o.case_id = c.id
                      order by o.outcome_ordinal desc limit 1) tested on true
  left join lateral (select length(coalesce(substring(c.battery_serial from '[0-9]+$'), '')) as digits) tail on true
  left join current_produced_range made
         on tail.digits > 0
        and made.stem = left(c.battery_serial, length(c.battery_serial) - tail.digits)
        and made.digits = tail.digits
        and numrange(made.from_number, made.to_number, '[]') @> nullif(right(c.battery_serial, tail.digits), '')::numeric;
