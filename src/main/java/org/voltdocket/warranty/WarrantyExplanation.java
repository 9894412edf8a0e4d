package org.voltdocket.warranty;

import java.math.BigDecimal;
import java.time.format.DateTimeFormatter;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import org.voltdocket.kernel.Money;
import org.voltdocket.ui.TextFormatter;

/** A sum in sentences, one step of the arithmetic each, so that anybody can do it again by hand. */
@Component
class WarrantyExplanation {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

    private final TextFormatter words;

    WarrantyExplanation(TextFormatter words) {
        this.words = words;
    }

    WarrantyCalculation said(WarrantyCalculation sum, Money asked) {
        List<String> said = new ArrayList<>();
        if (sum.startsOn() == null) {
            said.add(words.say("warranty.said.no-start"));
        } else if (sum.standing().equals("unknown")) {
            said.add(words.say("warranty.said.before." + sum.startsFrom(), day(sum.claimedOn()), day(sum.startsOn())));
        } else if (sum.terms() == null) {
            said.add(words.say("warranty.said.no-terms", use(sum), day(sum.startsOn())));
        } else {
            said.add(age(sum));
            said.add(terms(sum));
            said.add(kilometres(sum));
            if (sum.outside() != null) {
                said.add(outside(sum.outside()));
            }
            said.add(words.say(
                    "warranty.said.sum", asked.toString(), percent(sum.percent()), sum.due() + " " + asked.code()));
        }
        return new WarrantyCalculation(
                sum.standing(),
                sum.useClass(),
                sum.startsOn(),
                sum.startsFrom(),
                sum.claimedOn(),
                sum.months(),
                sum.days(),
                sum.month(),
                sum.drivenKm(),
                sum.terms(),
                sum.percent(),
                sum.due(),
                sum.outside(),
                List.copyOf(said));
    }

    private String age(WarrantyCalculation sum) {
        return words.say(
                "warranty.said.age." + sum.startsFrom(),
                day(sum.startsOn()),
                day(sum.claimedOn()),
                span(sum.months(), sum.days()),
                sum.month().toString());
    }

    private String terms(WarrantyCalculation sum) {
        WarrantyCalculation.TermsView terms = sum.terms();
        String table = terms.proRata() == null || terms.proRata().isEmpty()
                ? words.say("warranty.said.table.none")
                : terms.proRata().stream()
                        .map(row -> words.say(
                                "warranty.said.table.row",
                                Integer.toString(row.throughMonth()),
                                percent(row.percent())))
                        .collect(Collectors.joining(", "));
        return words.say(
                terms.batteryType() == null ? "warranty.said.terms.chemistry" : "warranty.said.terms.type",
                terms.batteryType() == null ? words.of("chemistry", terms.chemistry()) : terms.batteryType(),
                use(sum),
                day(terms.validFrom()),
                Integer.toString(terms.freeMonths()),
                table);
    }

    private String kilometres(WarrantyCalculation sum) {
        Integer limit = sum.terms().mileageKm();
        if (limit == null) {
            return words.say("warranty.said.km.no-limit");
        }
        return sum.drivenKm() == null
                ? words.say("warranty.said.km.unknown", km(limit))
                : words.say("warranty.said.km", km(sum.drivenKm()), km(limit));
    }

    private String outside(WarrantyCalculation.Outside outside) {
        List<String> by = new ArrayList<>();
        if (outside.months() != null) {
            by.add(words.say(
                    "warranty.said.outside.time", span(outside.months(), outside.days()), day(outside.endedOn())));
        }
        if (outside.km() != null) {
            by.add(words.say("warranty.said.outside.km", km(outside.km())));
        }
        return words.say("warranty.said.outside", String.join("; ", by));
    }

    private String span(int months, int days) {
        return words.say("warranty.said.span", months, days);
    }

    private String use(WarrantyCalculation sum) {
        return words.of("use-class", sum.useClass());
    }

    private static String percent(BigDecimal percent) {
        return percent.stripTrailingZeros().toPlainString();
    }

    private static String km(int km) {
        return String.format(Locale.ROOT, "%,d", km).replace(',', '\u202f');
    }

    private static String day(TemporalAccessor day) {
        return DAY.format(day);
    }
}
