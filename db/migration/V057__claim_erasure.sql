-- Erasure of the free text of a case's claims and of the documents of their decisions. Amounts, decisions, who took them and the
-- digests of what they rest on stay.
create function erase_claim_texts(erased_case uuid, pseudonym text) returns void language plpgsql security definer
        set search_path = public, pg_temp as $$
declare
    claims uuid[] := array(select id from claim where case_id = erased_case);
begin
    perform set_config('voltdocket.erasing', 'yes', true);
    update claim_step set reason = erased_text(reason) where claim_id = any (claims);
    update claim_answer set words = erased_text(words) where claim_id = any (claims);
    update claim_proposal set reason = erased_text(reason) where claim_id = any (claims);
    update claim_decision set reason = erased_text(reason) where claim_id = any (claims);
    update claim_objection set reason = erased_text(reason) where claim_id = any (claims);
    update claim_objection_answer set answer = erased_text(answer)
        where objection_id in (select id from claim_objection where claim_id = any (claims));
    update claim_document set bytes = '' where claim_id = any (claims);
    update claim_desk set vin = pseudonym where case_id = erased_case;
    perform set_config('voltdocket.erasing', '', true);
end
$$;

revoke execute on function erase_claim_texts(uuid, text) from public;
grant execute on function erase_claim_texts(uuid, text) to voltdocket_staff;
