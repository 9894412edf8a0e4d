package org.voltdocket.demo.model;

/**
 * Bytes and values of the OBD-II mode 01 parameters that the recordings use (SAE J1979, ISO 15031-5). A value outside
 * what the bytes can carry is sent as the nearest that they can.
 */
public enum ObdII {
    /** °C, 1 byte, A − 40. */
    COOLANT(0x05, 1, 1, -40),
    /** 1/min, 2 bytes, (256 A + B) / 4. */
    ENGINE_RPM(0x0C, 2, 0.25, 0),
    /** km/h, 1 byte. */
    SPEED(0x0D, 1, 1, 0),
    /** s since the engine started, 2 bytes. */
    RUN_TIME(0x1F, 2, 1, 0),
    /** V at the control module (not at the posts), 2 bytes, (256 A + B) / 1000. */
    MODULE_VOLTAGE(0x42, 2, 0.001, 0),
    /** °C, 1 byte, A − 40. */
    AMBIENT(0x46, 1, 1, -40),
    /** %, 1 byte, 100 A / 255. */
    BATTERY_PACK_LIFE(0x5B, 1, 100.0 / 255, 0);

    private final int pid;
    private final int bytes;
    private final double step;
    private final double offset;

    ObdII(int pid, int bytes, double step, double offset) {
        this.pid = pid;
        this.bytes = bytes;
        this.step = step;
        this.offset = offset;
    }

    /** The parameter's number. */
    public int pid() {
        return pid;
    }

    /** Data bytes of the answer, A first. */
    public int[] encode(double value) {
        long most = (1L << (8 * bytes)) - 1;
        long raw = Math.max(0, Math.min(most, Math.round((value - offset) / step)));
        return bytes == 1 ? new int[] {(int) raw} : new int[] {(int) (raw >> 8), (int) (raw & 0xFF)};
    }

    /**
     * Value of an answer's data bytes.
     *
     * @throws IllegalArgumentException if there are more or fewer bytes than this parameter has
     */
    public double decode(int... data) {
        if (data.length != bytes) {
            throw new IllegalArgumentException(this + " has " + bytes + " data bytes, not " + data.length);
        }
        long raw = 0;
        for (int b : data) {
            raw = raw << 8 | b & 0xFF;
        }
        // dividing by a whole number keeps 14400 mV at 14.4 V exactly
        double scaled = step < 0.01 ? raw / 1000.0 : raw * step;
        return scaled + offset;
    }

    /** What a scan tool reads when the vehicle knows this value. */
    public double asRead(double value) {
        return decode(encode(value));
    }
}
