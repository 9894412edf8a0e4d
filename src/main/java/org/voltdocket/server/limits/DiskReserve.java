package org.voltdocket.server.limits;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.boot.health.contributor.Status;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;
import org.springframework.web.filter.OncePerRequestFilter;
import org.voltdocket.access.web.RequestBodyFilter;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.server.startup.StartupException;

/**
 * Keeps a reserve of free space on the disks that this server writes to: while one has less, uploads are refused before their
 * body is read, and everything else goes on.
 *
 * <p>The disks are that of temporary files, that of an embedded database, and those of {@code voltdocket.disk.paths}, such as
 * the disk of a PostgreSQL on the same machine.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 30)
public class DiskReserve extends OncePerRequestFilter implements HealthIndicator {

    /** Health of a server that is ready, but takes no files. */
    public static final Status LIMITED = new Status("LIMITED");

    private static final int RETRY_AFTER_S = 300;

    private final long reserveBytes;
    private final Map<String, Path> folders = new LinkedHashMap<>();

    /**
     * A disk with its room.
     *
     * @param belowReserve whether so little is left that uploads are refused
     */
    public record Disk(String what, String path, long freeBytes, long allBytes, boolean belowReserve) {

        /** Whether less than a tenth, or less than 1 GB, is left. */
        public boolean low() {
            return freeBytes < allBytes / 10 || freeBytes < 1_000_000_000L;
        }
    }

    DiskReserve(
            @Value("${voltdocket.disk.reserve}") DataSize reserve,
            @Value("${voltdocket.disk.paths:}") List<String> paths,
            @Value("${voltdocket.data:}") String data) {
        this.reserveBytes = reserve.toBytes();
        folders.put("uploads", Path.of(System.getProperty("java.io.tmpdir")));
        if (!data.isBlank()) {
            folders.put("data", Path.of(data));
        }
        for (String path : paths) {
            if (path.isBlank()) {
                continue;
            }
            Path folder = Path.of(path.strip());
            if (!folder.toFile().isDirectory()) {
                throw new StartupException(
                        "There is no folder " + folder + ", which voltdocket.disk.paths names.",
                        "Correct VOLTDOCKET_DISK_PATHS and start again.");
            }
            folders.put("path-" + folders.size(), folder);
        }
    }

    /** The disks as they are now. */
    public List<Disk> disks() {
        List<Disk> disks = new ArrayList<>();
        folders.forEach((what, folder) -> {
            long free = folder.toFile().getUsableSpace();
            disks.add(new Disk(
                    what.startsWith("path-") ? "path" : what,
                    folder.toAbsolutePath().toString(),
                    free,
                    folder.toFile().getTotalSpace(),
                    free < reserveBytes));
        });
        return disks;
    }

    private boolean isBelow() {
        return disks().stream().anyMatch(Disk::belowReserve);
    }

    @Override
    public Health health() {
        return (isBelow() ? Health.status(LIMITED) : Health.up()).build();
    }

    @Override
    protected boolean shouldNotFilter(HttpServletRequest request) {
        String type = request.getContentType();
        return type == null || !type.toLowerCase(Locale.ROOT).startsWith("multipart/");
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (isBelow()) {
            request.setAttribute(RequestBodyFilter.REFUSED, true);
            throw RequestException.of(
                            507,
                            "disk-full",
                            "A disk of the server has less free space than its reserve, so it takes no files now. Nothing of this"
                                    + " was stored; what was acknowledged before is safe and can be read. Tell the administrator,"
                                    + " who sees at /watch which disk it is; then send it again.")
                    .retryAfter(RETRY_AFTER_S);
        }
        chain.doFilter(request, response);
    }
}
