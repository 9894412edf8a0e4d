package org.voltdocket.worlds;

import java.time.OffsetDateTime;
import java.util.List;
import org.voltdocket.diagnosis.EvidenceKind;
import org.voltdocket.diagnosis.Recording;
import org.voltdocket.worlds.ceraolo.CeraoloWorld;
import org.voltdocket.worlds.ciemat.CiematWorld;
import org.voltdocket.worlds.shepherd.ShepherdWorld;

/** A simulated world: a battery model from the literature and all that surrounds it. */
public abstract class World {

    private final String name;
    private final DriveCycle cycle;
    private final Instruments instruments;
    private final Logger.Maker logger;

    /**
     * @param name on the command line and in reports
     */
    protected World(String name, DriveCycle cycle, Instruments instruments, Logger.Maker logger) {
        this.name = name;
        this.cycle = cycle;
        this.instruments = instruments;
        this.logger = logger;
    }

    /** All there are. */
    public static List<World> all() {
        return List.of(new CeraoloWorld(), new CiematWorld(), new ShepherdWorld());
    }

    /** The name on the command line and in reports. */
    public final String name() {
        return name;
    }

    /** The battery of a case after a long rest, at a state of charge (0 to 1) and a temperature. */
    public abstract BatteryModel battery(Setup setup, double charge, double celsius);

    protected abstract Alternator alternator(Setup setup);

    protected abstract ChargeController controller(Setup setup);

    final DriveCycle cycle() {
        return cycle;
    }

    final Instruments instruments() {
        return instruments;
    }

    /** What a logger keeps of a trace. */
    final Logged log(Trace trace, EvidenceKind kind, OffsetDateTime startedAt, Setup setup, Chance chance) {
        return logger.of(trace, kind, startedAt, setup, chance).take();
    }

    /**
     * A recording with its place in the trace.
     *
     * @param fromS trace time of its first row, s
     * @param toS trace time of its last row, s
     */
    public record Logged(Recording recording, double fromS, double toS) {}
}
