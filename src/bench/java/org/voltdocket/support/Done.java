package org.voltdocket.support;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * What a benchmark got through. JMH prints each field per microsecond, so {@code bytes} reads as MB/s, {@code rows} as
 * million rows a second and {@code cpu} as the share of the time that this thread had a processor: divide by it on a
 * busy machine.
 */
@AuxCounters(AuxCounters.Type.OPERATIONS)
@State(Scope.Thread)
public class Done {

    private static final ThreadMXBean CPU = ManagementFactory.getThreadMXBean();

    public double bytes;
    public double rows;
    public double cpu;
    private long beforeNs;

    @Setup(Level.Iteration)
    public void start() {
        bytes = 0;
        rows = 0;
        cpu = 0;
        beforeNs = CPU.getCurrentThreadCpuTime();
    }

    /** Counts one operation. */
    public void add(long moreBytes, long moreRows) {
        bytes += moreBytes;
        rows += moreRows;
        long now = CPU.getCurrentThreadCpuTime();
        cpu += (now - beforeNs) / 1e3;
        beforeNs = now;
    }
}
