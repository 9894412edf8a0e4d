package org.voltdocket.server.command;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.springframework.boot.WebApplicationType;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.ComponentScan;
import org.springframework.context.annotation.FilterType;
import org.springframework.context.annotation.Import;
import org.voltdocket.evidence.original.OriginalCopies;

/**
 * Copies the original files in the object store to a folder, {@code --save-originals=FOLDER}, or puts those back that the store
 * lacks, {@code --return-originals=FOLDER}; with the environment that the server has. {@code db/archive} calls both.
 */
public final class CopyOriginals {

    private static final String SAVE = "--save-originals=";
    private static final String RETURN = "--return-originals=";

    private CopyOriginals() {}

    /** Whether the arguments name one of the commands. */
    public static boolean isAsked(String... arguments) {
        return folder(SAVE, arguments).or(() -> folder(RETURN, arguments)).isPresent();
    }

    /** @return 0 where all originals are copied, 1 where one is missing, damaged or the store does not answer */
    public static int run(PrintStream out, String... arguments) {
        try (ConfigurableApplicationContext context = new SpringApplicationBuilder(Parts.class)
                .web(WebApplicationType.NONE)
                .logStartupInfo(false)
                .run(arguments)) {
            OriginalCopies copies = context.getBean(OriginalCopies.class);
            folder(SAVE, arguments)
                    .ifPresent(
                            folder -> out.println("Originals copied to " + folder + ": " + copies.save(folder) + "."));
            folder(RETURN, arguments)
                    .ifPresent(folder ->
                            out.println("Originals put back into the store: " + copies.putBack(folder) + "."));
            return 0;
        } catch (RuntimeException e) {
            out.println("Not all originals are copied: " + e.getMessage());
            return 1;
        }
    }

    private static Optional<Path> folder(String option, String... arguments) {
        return Arrays.stream(arguments)
                .filter(one -> one.startsWith(option))
                .map(one -> Path.of(one.substring(option.length())))
                .findFirst();
    }

    /** The beans that the commands need. No {@code @Configuration}, so that the server's own scan ignores it. */
    @Import(VerifyTrail.Lean.class)
    @ComponentScan(
            basePackageClasses = OriginalCopies.class,
            useDefaultFilters = false,
            includeFilters =
                    @ComponentScan.Filter(
                            type = FilterType.REGEX,
                            pattern =
                                    "org\\.voltdocket\\.evidence\\.original\\.(OriginalCopies|ObjectStoreConfiguration)"))
    static class Parts {}
}
