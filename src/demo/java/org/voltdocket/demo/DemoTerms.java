package org.voltdocket.demo;

import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;
import org.voltdocket.claim.deadline.WorkingDayService;
import org.voltdocket.diagnosis.Chemistry;
import org.voltdocket.kernel.Actor;
import org.voltdocket.warranty.WarrantyTermsForm;
import org.voltdocket.warranty.WarrantyTermsService;

/** Enters the warranty terms and holidays of the invented distributor once, as an administrator would. */
@Component
@Profile("demo")
class DemoTerms implements ApplicationRunner {

    private static final String REASON = "Invented for the demonstration.";

    private final WarrantyTermsService terms;
    private final WorkingDayService days;

    DemoTerms(WarrantyTermsService terms, WorkingDayService days) {
        this.terms = terms;
        this.days = days;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        if (!terms.all().isEmpty()) {
            return;
        }
        for (Chemistry chemistry : Chemistry.values()) {
            boolean deep = chemistry == Chemistry.AGM || chemistry == Chemistry.GEL;
            record("", chemistry.id(), "private", "2022-01-01", "24", deep ? "36: 50\n48: 25" : "36: 40", "");
            record("", chemistry.id(), "commercial", "2022-01-01", "12", "24: 50", "100000");
            record("", chemistry.id(), "taxi", "2022-01-01", "6", "12: 50\n18: 25", "60000");
        }
        record("FENN-A70", "", "private", "2025-07-01", "36", "48: 40", "");
        days.set(
                Actor.system(),
                "5",
                "10",
                "2026-12-24 Lantern Eve (invented)\n2026-12-25\n2026-12-26\n2027-01-01\n2027-05-03 Ferry Day (invented)");
    }

    private void record(String type, String chemistry, String use, String from, String free, String table, String km) {
        terms.record(Actor.system(), new WarrantyTermsForm.Form(type, chemistry, use, from, free, table, km, REASON));
    }
}
