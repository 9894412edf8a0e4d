package org.voltdocket.demo.model;

import org.voltdocket.diagnosis.Chemistry;

/** Parameters of a run of the model. The fields are mutable: scenarios set them and the model reads them. */
public final class ModelSettings implements Cloneable {

    /** How the charging source may fail. */
    public enum SourceFault {
        NONE,
        /** No output. */
        DEAD,
        /** A fraction {@link #sourceLevel} of its nominal current. */
        WEAK,
        /** Holds {@link #sourceLevel} volts whatever is commanded. */
        OVER,
        /** The drive slips under load: output comes and goes. */
        SLIPPING,
        /** One rectifier diode open: less current, much ripple. */
        DIODE
    }

    /** How the road is. */
    public enum Road {
        TOWN,
        MIXED,
        MOTORWAY
    }

    // battery
    public Chemistry chemistry = Chemistry.FLOODED;
    /** Nominal, Ah at 20 h. */
    public double capacityAh = 60;
    /** Capacity left, share of nominal. */
    public double capacityLeft = 1;
    /** Ohmic resistance over that of a new one. */
    public double resistanceFactor = 1;
    /** Resistance of a broken strap or post, Ω. */
    public double strapOhm = 0;
    /** What a shorted cell takes off the voltage, V. */
    public double missingCellV = 0;
    /** Current that the battery loses inside, A. */
    public double selfDischargeA = 0;
    /** Charge at the start, 0 to 1 of what it can hold. */
    public double charge = 0.85;
    /** Battery and outside air at the start, °C. */
    public double temperatureC = 15;

    // charging
    public boolean managed = true;
    public boolean stopStart = false;
    /** Nominal output, A. */
    public double alternatorA = 120;
    /** Set point of a conventional regulator at 25 °C, V. */
    public double regulatedV = 14.3;

    public SourceFault sourceFault = SourceFault.NONE;
    public double sourceLevel = 0;
    /** Volts that a control unit which is stuck commands; 0 where it works. */
    public double stuckAtV = 0;
    /** Whether it still charges while coasting, stuck or not. */
    public boolean recuperates = true;
    /** Reported charge, %, above which a managed controller rests. */
    public double restAbovePct = 79;
    /** Reported battery current that a resting controller aims at, A. */
    public double restCurrentA = 0.5;
    /** When a scan tool commands 14.5 V for a minute near the end. */
    public boolean commandedAtEnd = false;

    // wiring
    /** Between charging source and posts, Ω. */
    public double cableOhm = 0.003;
    /** Share of the loads connected at the source's side of that resistance. */
    public double loadsAtSource = 0.5;

    // the vehicle's own battery sensor
    public double sensorOffsetA = 0;
    public double sensorGain = 1;
    public double sensorNoiseA = 0.05;
    public double sensorStepA = 0.1;
    public double sensorOffsetV = 0;
    public double sensorStepV = 0.1;
    /** Whether the vehicle's voltage is taken at the source's side of the cable. */
    public boolean voltageAtSource = false;
    /** Charge that the vehicle believes in at the start, %. */
    public double believedPct = 85;
    /** Lateness of what the vehicle reports, s. */
    public double lateS = 0.6;

    // loads
    /** Engine and control units, A. */
    public double baseLoadA = 11;

    public boolean lamps = false;
    public double blowerA = 5;
    /** Heated screen, A, for the first ten minutes. */
    public double heatedScreenA = 0;

    public double seatsA = 0;
    /** Taken from the parked vehicle, A. */
    public double standingDrainA = 0.02;
    /** Of the starter on its plateau at 20 °C, A. */
    public double starterA = 160;

    // road
    public Road road = Road.MIXED;
    public double durationS = 1800;

    /** Longest halt in town, s. */
    public int longestHaltS = 42;

    // recording
    public double rateHz = 5;
    public double measuredStepV = 0.01;
    public double measuredNoiseV = 0.006;
    public boolean measuredA = true;

    /** A clamp for small currents, set to zero before: within some 10 mA instead of some 60. */
    public boolean smallClamp = false;

    public boolean reportedV = true;
    public boolean reportedA = true;
    public boolean reportedSoc = true;
    public boolean engineData = true;
    public boolean temperatures = true;
    /** Between two readings of one slow channel, s. */
    public double pollS = 1;
    /** Whether the logger lost some seconds once. */
    public boolean gap = false;

    /** Another one with the same values, to change freely. */
    public ModelSettings copy() {
        try {
            return (ModelSettings) clone();
        } catch (CloneNotSupportedException e) {
            throw new IllegalStateException("it is cloneable", e);
        }
    }
}
