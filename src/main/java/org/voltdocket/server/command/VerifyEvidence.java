package org.voltdocket.server.command;

import java.io.PrintStream;
import java.util.Arrays;
import java.util.Locale;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.ComponentScan;
import org.springframework.context.annotation.FilterType;
import org.springframework.context.annotation.Import;
import org.voltdocket.evidence.original.OriginalFileStore;
import org.voltdocket.evidence.storage.EvidenceCheck;

/**
 * Reads all evidence without a server and says what is damaged: {@code java -jar voltdocket.jar --verify-evidence}, with the
 * environment that the server has. Reads only; meant for a restored backup. The demo's database has to be at rest, for it
 * belongs to one process.
 */
public final class VerifyEvidence {

    /** What asks for it. */
    public static final String OPTION = "--verify-evidence";

    static final int SOUND = 0;
    static final int DAMAGED = 1;
    static final int CANNOT_TELL = 2;

    private VerifyEvidence() {}

    /** Whether the arguments ask for it. */
    public static boolean isAsked(String... arguments) {
        return Arrays.asList(arguments).contains(OPTION);
    }

    /** @return 0 where all is as it was kept, 1 where something is damaged, 2 where it cannot be told */
    public static int run(PrintStream out, String... arguments) {
        try (ConfigurableApplicationContext context = new SpringApplicationBuilder(Lean.class)
                .web(WebApplicationType.NONE)
                .logStartupInfo(false)
                .run(arguments)) {
            return tell(out, context.getBean(EvidenceCheck.class).all());
        } catch (RuntimeException e) {
            out.println("The evidence cannot be verified: " + e.getMessage());
            return CANNOT_TELL;
        }
    }

    private static int tell(PrintStream out, EvidenceCheck.Found found) {
        found.faults().forEach(out::println);
        if (found.damaged() > found.faults().size()) {
            out.println("and " + (found.damaged() - found.faults().size()) + " more.");
        }
        String read = String.format(
                Locale.ROOT,
                "%d originals of %d bytes and %d blocks read",
                found.files(),
                found.bytes(),
                found.blocks());
        if (found.inStore() > 0) {
            read += "; " + found.inStore() + " of the originals are in the store of objects";
        }
        tell(out, found.strays());
        out.println(
                found.sound()
                        ? "The evidence is intact: " + read + "."
                        : "DAMAGED: " + found.damaged() + " places; " + read + ". Restore from a backup that holds.");
        return found.sound() ? SOUND : DAMAGED;
    }

    private static void tell(PrintStream out, EvidenceCheck.Strays strays) {
        if (strays.count() == 0) {
            return;
        }
        out.println("Objects in the store that are no evidence: " + strays.count()
                + ". An upload was broken off before it was"
                + " kept, or is under way. They harm nothing; the same file again uses its object.");
        strays.names().forEach(name -> out.println("  " + name));
        if (strays.count() > strays.names().size()) {
            out.println("  and " + (strays.count() - strays.names().size()) + " more");
        }
    }

    /** The beans that the verification needs. Without {@code @Configuration}: the server must not find it. */
    @Import(VerifyTrail.Lean.class)
    @ComponentScan(
            basePackageClasses = {EvidenceCheck.class, OriginalFileStore.class},
            useDefaultFilters = false,
            includeFilters =
                    @ComponentScan.Filter(
                            type = FilterType.REGEX,
                            pattern =
                                    "org\\.voltdocket\\.evidence\\.(storage|original)\\.(EvidenceCheck|OriginalFileStore|OriginalKeys|OrphanedObjects|ObjectStoreConfiguration)"))
    static class Lean {}
}
