package org.voltdocket.casefile.web;

import org.springframework.core.convert.converter.Converter;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.CaseNumber;

/** Lets addresses carry a case number in any form a person types; one that cannot be is not found. */
@Component
class CaseNumberConverter implements Converter<String, CaseNumber> {

    @Override
    public CaseNumber convert(String text) {
        return CaseNumber.parse(text);
    }
}
