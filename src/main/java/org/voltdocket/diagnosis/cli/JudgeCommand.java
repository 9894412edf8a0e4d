package org.voltdocket.diagnosis.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.voltdocket.diagnosis.Assessment;
import org.voltdocket.diagnosis.CaseInput;
import org.voltdocket.diagnosis.assess.Diagnosis;
import org.voltdocket.diagnosis.rulebook.Rulebook;
import org.voltdocket.diagnosis.write.AssessmentJson;
import org.voltdocket.diagnosis.write.AssessmentText;

/** Assesses folders by the current edition of the rule book, without a server. See {@link #HELP}. */
public final class JudgeCommand {

    static final int DONE = 0;
    static final int REFUSED = 1;
    static final int USAGE = 2;

    static final String HELP = """
            Usage: java -jar voltdocket-<version>-judge.jar [--json] FOLDER...

            Assesses each folder as one case by the rule book. A folder contains
              case-request.json    serial, VIN and facts, as for POST /api/v1/cases
              *.json               test records: battery-test, cranking-test, charging-test
              *.csv, *.csv.gz      recordings of the voltage
            Each folder is assessed as a case without history.

            --json    one line of JSON per folder, as in the API; null where a file was refused
            --help    this text

            Results appear in the order of the folders, progress and refused files on standard error.
            Exit codes: 0 all folders assessed; 1 a file was refused or cannot be read; 2 wrong usage.
            """;

    private final boolean json;
    private final Clock clock;
    private final Rulebook rulebook = Rulebook.current();

    private JudgeCommand(boolean json, Clock clock) {
        this.json = json;
        this.clock = clock;
    }

    public static void main(String[] arguments) {
        int code = run(
                List.of(arguments),
                new PrintStream(System.out, true, UTF_8),
                new PrintStream(System.err, true, UTF_8),
                Clock.systemUTC());
        System.exit(code);
    }

    /** Runs the command and returns its exit code. */
    static int run(List<String> arguments, PrintStream out, PrintStream err, Clock clock) {
        if (arguments.contains("--help")) {
            out.print(HELP);
            return DONE;
        }
        List<Path> folders = new ArrayList<>();
        for (String argument : arguments) {
            if (argument.startsWith("--") && !argument.equals("--json")) {
                err.println("There is no option " + argument + ".\n\n" + HELP);
                return USAGE;
            }
            if (!argument.equals("--json")) {
                folders.add(Path.of(argument));
            }
        }
        for (Path folder : folders) {
            if (!Files.isDirectory(folder)) {
                err.println(folder + " is not a folder.");
                return USAGE;
            }
        }
        if (folders.isEmpty()) {
            err.println("Name at least one folder.\n\n" + HELP);
            return USAGE;
        }
        return new JudgeCommand(arguments.contains("--json"), clock).assess(folders, out, err);
    }

    /**
     * The result of one folder.
     *
     * @param text the assessment; null if a file was refused
     */
    private record Result(Path folder, String text, List<String> refusals) {}

    private int assess(List<Path> folders, PrintStream out, PrintStream err) {
        ExecutorService threads = Executors.newFixedThreadPool(
                Math.min(folders.size(), Runtime.getRuntime().availableProcessors()));
        try {
            List<Future<Result>> results = folders.stream()
                    .map(folder -> threads.submit(() -> assess(folder)))
                    .toList();
            int code = DONE;
            for (int i = 0; i < folders.size(); i++) {
                Result result = results.get(i).get();
                print(result, folders.size(), out);
                result.refusals().forEach(err::println);
                code = result.text() == null ? REFUSED : code;
                progress(i + 1, folders.size(), err);
            }
            return code;
        } catch (InterruptedException | ExecutionException e) {
            throw new IllegalStateException(e);
        } finally {
            threads.shutdownNow();
        }
    }

    private Result assess(Path folder) {
        CaseFolder files = new CaseFolder(folder, clock.instant());
        try {
            CaseInput input = files.read();
            return new Result(folder, input == null ? null : text(input), files.refusals());
        } catch (NoSuchFileException e) {
            return new Result(folder, null, List.of(e.getFile() + ": the file is missing"));
        } catch (IOException e) {
            return new Result(folder, null, List.of(folder + ": cannot be read: " + e));
        }
    }

    private String text(CaseInput input) {
        Assessment assessment = Diagnosis.assess(input, rulebook);
        return json ? AssessmentJson.of(assessment, clock.instant()) + "\n" : AssessmentText.of(assessment);
    }

    private void print(Result result, int folders, PrintStream out) {
        if (json) {
            out.print(result.text() == null ? "null\n" : result.text());
        } else if (result.text() != null) {
            out.print(folders == 1 ? result.text() : "== " + result.folder() + "\n" + result.text() + "\n");
        }
        out.flush();
    }

    /** Reports each tenth of the folders. */
    private static void progress(int done, int all, PrintStream err) {
        if (all > 1 && (done == all || done * 10L / all > (done - 1) * 10L / all)) {
            err.println("assessed " + done + " of " + all);
        }
    }
}
