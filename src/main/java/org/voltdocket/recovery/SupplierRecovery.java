package org.voltdocket.recovery;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;
import org.voltdocket.kernel.Sha256;

/**
 * A list of claims that was sent to a supplier.
 *
 * @param supplier its code, and {@code supplierName} as the catalogue had it then
 * @param total what is asked for
 * @param pdf digest of the list as PDF, {@code csv} of the same as CSV
 * @param withdrawn empty while it is live
 */
public record SupplierRecovery(
        UUID id,
        String number,
        String supplier,
        String supplierName,
        Money total,
        Instant madeAt,
        String madeBy,
        Sha256 pdf,
        Sha256 csv,
        Optional<Withdrawn> withdrawn,
        List<Line> lines) {

    /** Taken back before the supplier answered. */
    public record Withdrawn(Instant at, String by, String reason) {}

    /**
     * One claim of the list.
     *
     * @param answers of the supplier, oldest first; the last one counts
     */
    public record Line(
            int position,
            UUID claim,
            CaseNumber number,
            BatterySerial serial,
            String type,
            String batch,
            LocalDate decidedOn,
            Money amount,
            List<Answer> answers) {

        /** What counts; empty while the supplier has not answered. */
        public Optional<Answer> answer() {
            return answers.isEmpty() ? Optional.empty() : Optional.of(answers.get(answers.size() - 1));
        }
    }

    /**
     * What came back for a claim.
     *
     * @param credited what is paid back; empty where it was refused
     */
    public record Answer(
            Optional<Money> credited, LocalDate on, Optional<String> reason, Instant recordedAt, String recordedBy) {}

    /** What is asked for and not answered; nothing where it was withdrawn. */
    public Money open() {
        return sum(lines.stream()
                .filter(line -> line.answer().isEmpty() && withdrawn.isEmpty())
                .map(Line::amount)
                .toList());
    }

    /** What came back. */
    public Money credited() {
        return sum(lines.stream()
                .flatMap(line -> line.answer().stream())
                .flatMap(answer -> answer.credited().stream())
                .toList());
    }

    private Money sum(List<Money> some) {
        return new Money(some.stream().map(Money::amount).reduce(BigDecimal.ZERO, BigDecimal::add), total.currency());
    }
}
