package org.voltdocket.evidence.original;

import java.net.URI;
import java.util.Map;
import java.util.Optional;

/**
 * Configuration of the object store.
 *
 * @param endpoint its address, {@code http://…} or {@code https://…}; null for that of the region
 * @param region such as {@code eu-central-1}; many stores take any
 * @param bucket its bucket, for this archive alone
 * @param pathStyle whether the bucket is named in the path of an address instead of in its host
 */
public record StoreSettings(URI endpoint, String region, String bucket, boolean pathStyle, String key, String secret) {

    static final String KEY = "VOLTDOCKET_RAW_KEY";
    static final String SECRET = "VOLTDOCKET_RAW_SECRET";

    /**
     * Reads the settings; a blank one is absent.
     *
     * @param environment of the process: credentials come from nowhere else, for a command line is seen by others
     * @return empty if no bucket is configured
     * @throws InvalidStoreSettingsException if they are invalid
     */
    static Optional<StoreSettings> of(
            String endpoint, String region, String bucket, String pathStyle, Map<String, String> environment) {
        if (bucket.isBlank()) {
            return Optional.empty();
        }
        String key = environment.getOrDefault(KEY, "").strip();
        String secret = environment.getOrDefault(SECRET, "").strip();
        if (key.isEmpty() || secret.isEmpty()) {
            throw new InvalidStoreSettingsException(
                    "The bucket " + bucket + " is named for original files, and the credentials for it are not.",
                    "Set " + KEY + " and " + SECRET + " in the environment.");
        }
        boolean inPath = pathStyle.isBlank() ? !endpoint.isBlank() : Boolean.parseBoolean(pathStyle.strip());
        return Optional.of(new StoreSettings(
                endpoint.isBlank() ? null : address(endpoint.strip()),
                region.isBlank() ? "us-east-1" : region.strip(),
                bucket.strip(),
                inPath,
                key,
                secret));
    }

    private static URI address(String endpoint) {
        if (endpoint.matches("https?://[^/\\s]+/?")) {
            try {
                return URI.create(endpoint);
            } catch (IllegalArgumentException e) {
                // said below
            }
        }
        throw new InvalidStoreSettingsException(
                "The address of the store of original files, " + endpoint + ", is none.",
                "Set voltdocket.raw.endpoint to one such as https://store.example.com, without a path.");
    }

    /** Where it is, without the credentials. */
    @Override
    public String toString() {
        return (endpoint == null ? region : endpoint) + ", bucket " + bucket;
    }
}
