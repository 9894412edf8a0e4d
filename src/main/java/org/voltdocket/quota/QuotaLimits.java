package org.voltdocket.quota;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.util.unit.DataSize;

/**
 * Quotas of each workshop, under {@code voltdocket.quota} in application.yml.
 *
 * @param uploadsPerDay requests with files
 * @param bytesPerDay size of these requests
 * @param assessmentsPerDay requests that make the server assess a case without a file
 * @param tokens tokens that work at the same time
 */
@ConfigurationProperties("voltdocket.quota")
record QuotaLimits(long uploadsPerDay, DataSize bytesPerDay, long assessmentsPerDay, long tokens) {}
