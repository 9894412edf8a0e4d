package org.voltdocket.quota.web;

import org.springframework.stereotype.Component;
import org.voltdocket.quota.QuotaService;
import org.voltdocket.quota.QuotaUse;

/** Warns beside an upload form; in templates {@code @usageHint}. */
@Component
public class UsageHint {

    private final QuotaService quotas;

    UsageHint(QuotaService quotas) {
        this.quotas = quotas;
    }

    /** The first quota of which the workshop that is signed in has used 80 % or more; null where there is none. */
    public QuotaUse near() {
        return QuotaFilter.workshop().stream()
                .flatMap(workshop -> quotas.of(workshop).stream())
                .filter(QuotaUse::isNear)
                .findFirst()
                .orElse(null);
    }
}
