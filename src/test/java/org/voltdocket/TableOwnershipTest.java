package org.voltdocket;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Every table and view belongs to the package that its migration names ({@code V0NN__package_purpose.sql}). Other packages
 * refer to it by foreign keys only; they use the owner's classes, or a view that the owner provides for others. The remaining
 * exceptions are listed in {@code src/test/resources/table-access-exceptions.txt}; no entry may be added.
 */
class TableOwnershipTest {

    private static final Path MIGRATIONS = Path.of("db/migration");
    private static final Path SOURCES = Path.of("src/main/java/org/voltdocket");
    private static final Path EXCEPTIONS = Path.of("src/test/resources/table-access-exceptions.txt");

    /** Views of migrations named {@code V0NN__package_views.sql}, which other packages may read. */
    private static final Set<String> PROVIDED = new TreeSet<>();

    private static final Pattern MIGRATION = Pattern.compile("V\\d+__([a-z]+)_[a-z_]+\\.sql");
    private static final Pattern CREATED = Pattern.compile("^create (?:table|view) (\\w+)", Pattern.MULTILINE);

    /** The words before names of tables, and the names: a list with aliases after {@code from}. */
    private static final Pattern USED = Pattern.compile(
            "\\b((?:delete )?from|join|into|update|truncate|using|alter table|trigger \\w+ [^;]*? on|index \\w+ on)"
                    + "\\s+(?:only\\s+)?(\\w+(?:(?:\\s+\\w+)?\\s*,\\s*\\w+)*)");

    private static final Map<String, String> OWNERS = new TreeMap<>();

    /** Access to a table of another package, such as {@code insight -> claim}, and where it was found. */
    private static final Map<String, Set<String>> FOUND = new TreeMap<>();

    @BeforeAll
    static void scan() throws IOException {
        List<Path> migrations = files(MIGRATIONS, ".sql");
        for (Path file : migrations) {
            Matcher created = CREATED.matcher(Files.readString(file));
            while (created.find()) {
                String name = created.group(1);
                assertThat(OWNERS.put(name, owner(file)))
                        .as("created twice: " + name)
                        .isNull();
                if (file.toString().endsWith("_views.sql")) {
                    PROVIDED.add(name);
                }
            }
        }
        for (Path file : migrations) {
            note(
                    owner(file),
                    Files.readString(file).replaceAll("--.*", ""),
                    file.getFileName().toString());
        }
        SqlInSources.scan(files(SOURCES, ".java"), (type, text) -> note(type.replaceFirst("\\..*", ""), text, type));
    }

    @Test
    void everyTableBelongsToAPackage() {
        assertThat(OWNERS).containsEntry("case_file", "casefile").containsEntry("insight_case", "insight");
        assertThat(OWNERS.values())
                .allSatisfy(owner -> assertThat(SOURCES.resolve(owner)).isDirectory());
        assertThat(PROVIDED).contains("case_summary").doesNotContain("insight_case", "case_file");
    }

    @Test
    void onlyItsOwnerUsesATable() throws IOException {
        Map<String, Set<String>> unexpected = new TreeMap<>(FOUND);
        unexpected.keySet().removeAll(exceptions().keySet());
        assertThat(unexpected).as("owners: " + OWNERS).isEmpty();
    }

    @Test
    void everyExceptionIsNeededAndHasAReason() throws IOException {
        assertThat(FOUND.keySet()).containsAll(exceptions().keySet());
        assertThat(exceptions().values()).noneMatch(String::isBlank);
    }

    @Test
    void accessIsFoundInAllFormsOfSql() {
        String sql =
                "select 1 from pallet p, claim c join evidence e on true where exists (select 1 from only workshop)";
        assertThat(foreign("mail", sql)).containsExactlyInAnyOrder("pallet", "claim", "evidence", "workshop");
        assertThat(foreign("mail", "with x as (delete from claim_count_change) insert into account values (1)"))
                .containsExactlyInAnyOrder("claim_count_change", "account");
        assertThat(foreign("mail", "create trigger t after update of a, b on case_file for each row"))
                .containsExactly("case_file");
        assertThat(foreign("casefile", "update case_file set number = 'from here'"))
                .isEmpty();
    }

    private static void note(String user, String sql, String where) {
        foreign(user, sql)
                .forEach(table -> FOUND.computeIfAbsent(user + " -> " + table, key -> new TreeSet<>())
                        .add(where));
    }

    private static Set<String> foreign(String user, String sql) {
        Set<String> tables = new TreeSet<>();
        Matcher used = USED.matcher(sql.toLowerCase());
        while (used.find()) {
            boolean read = used.group(1).equals("from") || used.group(1).equals("join");
            for (String one : used.group(2).split("\\s*,\\s*")) {
                String table = one.replaceFirst("\\s.*", "");
                if (!user.equals(OWNERS.getOrDefault(table, user)) && !(read && PROVIDED.contains(table))) {
                    tables.add(table);
                }
            }
        }
        return tables;
    }

    private static String owner(Path migration) {
        Matcher name = MIGRATION.matcher(migration.getFileName().toString());
        assertThat(name.matches()).as("V0NN__package_purpose.sql: " + migration).isTrue();
        return name.group(1);
    }

    private static List<Path> files(Path root, String suffix) throws IOException {
        try (Stream<Path> all = Files.walk(root)) {
            return all.filter(file -> file.toString().endsWith(suffix)).sorted().toList();
        }
    }

    /** Reasons by access. */
    private static Map<String, String> exceptions() throws IOException {
        Map<String, String> reasons = new TreeMap<>();
        for (String line : Files.readAllLines(EXCEPTIONS)) {
            if (!line.isBlank() && !line.startsWith("#")) {
                String[] parts = line.split("\\s+", 3);
                reasons.put(parts[0] + " -> " + parts[1], parts[2]);
            }
        }
        return reasons;
    }
}
