package org.voltdocket.worlds;

import java.util.ArrayList;
import java.util.List;
import org.voltdocket.diagnosis.Cause;
import org.voltdocket.diagnosis.Facts;

/**
 * Estimates which cases can be told at all. A case is compared with twins of the same charge, age, loads, instruments and
 * structure: one with nothing wrong, and some with a fault of another cause that shows itself in a similar way, in three
 * strengths each. The estimate knows the loads of both, which a diagnosis does not, so it is an upper bound.
 */
final class Distinguishability {

    private static final double[] STRENGTHS = {0.15, 0.5, 0.85};

    /** What the twins of a case showed. */
    enum Kind {
        /** Differs from every twin. */
        CLEAR,
        /** The fault has left no trace but the charge of the battery. */
        UNSEEN,
        /** A fault of another cause would show the same. */
        LIKE_ANOTHER
    }

    private final WorldCase one;
    private final WorldCase healthy;
    private final World world;
    private List<WorldCase> rivals;
    private final Difference difference;

    Distinguishability(World world, WorldCase one) {
        this.world = world;
        this.one = one;
        this.difference = new Difference(one.setup().managed());
        this.healthy = CaseMaker.twin(world, one, Effects.NONE);
    }

    /** What can be told from these channels. */
    Kind from(Channels channels) {
        if (one.fault().cause() == Cause.NONE) {
            return Kind.CLEAR;
        }
        if (one.fault().cause() == Cause.MISFIT) {
            return told(one.input().facts(), one.fault()) ? Kind.CLEAR : Kind.UNSEEN;
        }
        if (one.fault() == Fault.SHORT_TRIPS) {
            return one.input().evidence().stream()
                            .anyMatch(e -> e.reading() instanceof org.voltdocket.diagnosis.Recording)
                    ? Kind.CLEAR
                    : Kind.UNSEEN;
        }
        if (difference(healthy, channels) < 1) {
            return Kind.UNSEEN;
        }
        return rivals().stream().anyMatch(r -> difference(r, channels) < 1) ? Kind.LIKE_ANOTHER : Kind.CLEAR;
    }

    private List<WorldCase> rivals() {
        if (rivals == null) {
            rivals = new ArrayList<>();
            for (Fault rival : rivals(one.fault())) {
                for (double strength : STRENGTHS) {
                    rivals.add(CaseMaker.twin(world, one, Effects.of(rival, strength)));
                }
            }
        }
        return rivals;
    }

    private double difference(WorldCase twin, Channels channels) {
        return difference.of(channels.of(one.input()), channels.of(twin.input()));
    }

    private static List<Fault> rivals(Fault fault) {
        return switch (fault) {
            case CELL_LOST, JOINT_BROKEN -> List.of(Fault.WORN);
            case WORN -> List.of(Fault.JOINT_BROKEN, Fault.CELL_LOST);
            case SOURCE_DEAD, SOURCE_WEAK, BELT_SLIPS -> List.of(Fault.CHARGE_CABLE, Fault.CONTROL_LOW);
            case SOURCE_OVER -> List.of(Fault.CONTROL_HIGH);
            case SENSOR_HIGH -> List.of(Fault.CONTROL_LOW, Fault.CHARGE_CABLE);
            case SENSOR_LOW -> List.of(Fault.CONTROL_HIGH);
            case CONTROL_LOW -> List.of(Fault.SOURCE_WEAK, Fault.BELT_SLIPS, Fault.CHARGE_CABLE, Fault.SENSOR_HIGH);
            case CONTROL_HIGH -> List.of(Fault.SOURCE_OVER, Fault.SENSOR_LOW);
            case CHARGE_CABLE -> List.of(Fault.SOURCE_WEAK, Fault.BELT_SLIPS, Fault.CONTROL_LOW);
            case MAIN_CABLE -> List.of(Fault.JOINT_BROKEN);
            default -> List.of();
        };
    }

    /** A wrong battery is seen only by comparing what is fitted with what is required. */
    private static boolean told(Facts facts, Fault fault) {
        return fault == Fault.WRONG_SIZE
                ? facts.battery().capacityAh() != null && facts.vehicle().requiredCapacityAh() != null
                : facts.battery().chemistry() != null && facts.vehicle().requiredChemistry() != null;
    }
}
