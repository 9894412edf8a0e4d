package org.voltdocket.returned.bench;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.voltdocket.diagnosis.Chemistry;

/**
 * Charge, rest and re-test by construction. From memory of EN 50342-1: flooded 16.00 V for 24 h at no more than 5·I20; AGM
 * 14.80 V for 20 h, then 4 h at 0.5·I20; 24 h of rest; C20 by I20 to 10.50 V at 25 ± 2 °C. EFB as flooded, from memory too. Gel
 * at no more than 14.40 V, common practice without a single source. The manufacturer's instructions take precedence.
 */
public final class Procedure {

    private static final Duration NONE = Duration.ZERO;
    private static final Duration REST = Duration.ofHours(24);
    private static final double FLOODED_V = 16.00;
    private static final double AGM_V = 14.80;
    private static final double GEL_V = 14.40;

    private Procedure() {}

    /** The stages in order; for an unknown construction only those that do not charge. */
    public static List<ProcedureStage> of(Optional<Chemistry> chemistry) {
        ProcedureStage look = new ProcedureStage(BenchStep.LOOK, NONE, null, null, false);
        ProcedureStage first = new ProcedureStage(BenchStep.FIRST_TEST, NONE, null, null, true);
        ProcedureStage rest = new ProcedureStage(BenchStep.REST, REST, null, null, false);
        ProcedureStage second = new ProcedureStage(BenchStep.SECOND_TEST, NONE, null, null, false);
        ProcedureStage capacity = new ProcedureStage(BenchStep.CAPACITY, NONE, null, 1.0, true);
        if (chemistry.isEmpty()) {
            return List.of(look, first);
        }
        return switch (chemistry.get()) {
            case FLOODED, EFB ->
                List.of(look, first, charge(FLOODED_V, 24), rest, second, capacity, recharge(FLOODED_V, 24));
            case AGM ->
                List.of(
                        look,
                        first,
                        charge(AGM_V, 20),
                        new ProcedureStage(BenchStep.AFTER_CHARGE, Duration.ofHours(4), null, 0.5, false),
                        rest,
                        second,
                        capacity,
                        recharge(AGM_V, 20));
            case GEL -> List.of(look, first, charge(GEL_V, 24), rest, second, capacity, recharge(GEL_V, 24));
        };
    }

    private static ProcedureStage charge(double volts, int hours) {
        return new ProcedureStage(BenchStep.CHARGE, Duration.ofHours(hours), volts, 5.0, false);
    }

    private static ProcedureStage recharge(double volts, int hours) {
        return new ProcedureStage(BenchStep.RECHARGE, Duration.ofHours(hours), volts, 5.0, true);
    }
}
