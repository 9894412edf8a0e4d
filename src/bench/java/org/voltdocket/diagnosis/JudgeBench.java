package org.voltdocket.diagnosis;

import org.voltdocket.diagnosis.assess.Diagnosis;
import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.secondmodel.HourDrive;
import org.voltdocket.support.Done;

/**
 * Judging one case with a drive of an hour at 10 Hz in eight channels, with a clamp and without one. {@code -prof gc}
 * tells the bytes taken for it ({@code gc.alloc.rate.norm}); the columns' own bytes are printed at the start.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(value = 1, jvmArgs = {"-Xmx512m", "-XX:+UseSerialGC"})
@State(Scope.Benchmark)
public class JudgeBench {

    @Param({"true", "false"})
    public boolean clamp;

    /** By each edition, for a newer one may fit and divide by other methods. */
    @Param({"2026.1"})
    public String edition;

    private Rulebook rulebook;
    private Recording recording;
    private CaseInput input;

    @Setup(Level.Trial)
    public void drive() throws IOException {
        try (InputStream yaml = JudgeBench.class.getResourceAsStream("/shared/rulebook/" + edition + ".yaml")) {
            rulebook = Rulebook.read(yaml);
        }
        recording = HourDrive.recording(clamp);
        input = HourDrive.in(recording);
        System.out.printf("columns take %d bytes%n", HourDrive.columnBytes(recording));
    }

    @Benchmark
    public Assessment assess(Done done) {
        Assessment said = Diagnosis.assess(input, rulebook);
        done.add(0, recording.rows());
        return said;
    }
}
