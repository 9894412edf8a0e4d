package org.voltdocket.worlds;

import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.worlds.ceraolo.CeraoloWorld;
import org.voltdocket.worlds.ciemat.CiematWorld;
import org.voltdocket.worlds.shepherd.ShepherdWorld;

/** A simulated world: a battery model from the literature and all that surrounds it. */
public interface World {

    /** All there are. */
    static List<World> all() {
        return List.of(new CeraoloWorld(), new CiematWorld(), new ShepherdWorld());
    }

    /** The name on the command line and in reports. */
    String name();

    /** The battery of a case after a long rest, at a state of charge (0 to 1) and a temperature. */
    BatteryModel battery(Setup setup, double charge, double celsius);

    Alternator alternator(Setup setup);

    ChargeController controller(Setup setup);

    DriveCycle cycle();

    Instruments instruments();

    /** What a logger keeps of a trace. */
    Logged log(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance);

    /**
     * A recording with its place in the trace.
     *
     * @param fromS trace time of its first row, s
     * @param toS trace time of its last row, s
     */
    record Logged(Recording recording, double fromS, double toS) {}
}
