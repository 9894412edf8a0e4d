package org.voltdocket.outside;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;

/** Rows of a published table in {@code shared/reference}: comment lines and the header dropped, an empty cell kept. */
public final class Reference {

    private Reference() {}

    /** The cells of each row. */
    public static List<String[]> rows(String name) {
        List<String[]> rows = new ArrayList<>();
        try (InputStream in = Reference.class.getResourceAsStream("/shared/reference/" + name)) {
            if (in == null) {
                throw new IllegalStateException("shared/reference/" + name + " is missing");
            }
            BufferedReader reader = new BufferedReader(new InputStreamReader(in, UTF_8));
            boolean header = true;
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.startsWith("#") || line.isBlank()) {
                    continue;
                }
                if (!header) {
                    rows.add(line.split(",", -1));
                }
                header = false;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return rows;
    }
}
