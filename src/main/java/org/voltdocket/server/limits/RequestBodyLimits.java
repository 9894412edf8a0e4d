package org.voltdocket.server.limits;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.util.unit.DataSize;

/**
 * How large and how slow a request body may be, under {@code voltdocket.body} in application.yml.
 *
 * @param grace waiting time before the rate counts
 * @param minBytesPerSecond least mean rate after the grace time
 * @param maxSize largest body that is no upload
 * @param maxDuration longest waiting time for a body that is no upload
 * @param uploadMaxDuration longest waiting time for an upload
 */
@ConfigurationProperties("voltdocket.body")
record RequestBodyLimits(
        Duration grace, int minBytesPerSecond, DataSize maxSize, Duration maxDuration, Duration uploadMaxDuration) {}
