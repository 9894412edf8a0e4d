package org.voltdocket.evidence.original;

import java.time.Duration;
import software.amazon.awssdk.auth.credentials.AwsBasicCredentials;
import software.amazon.awssdk.auth.credentials.StaticCredentialsProvider;
import software.amazon.awssdk.core.checksums.RequestChecksumCalculation;
import software.amazon.awssdk.core.checksums.ResponseChecksumValidation;
import software.amazon.awssdk.http.urlconnection.UrlConnectionHttpClient;
import software.amazon.awssdk.regions.Region;
import software.amazon.awssdk.services.s3.S3Client;
import software.amazon.awssdk.services.s3.S3ClientBuilder;

/** How the store is spoken to: by what every server of the protocol understands, and without waiting long. */
final class S3ClientFactory {

    /** A store that does not even take a connection is away. */
    static final Duration CONNECT = Duration.ofSeconds(2);

    /** Between two pieces of an answer. */
    private static final Duration SILENCE = Duration.ofSeconds(10);

    /** Enough for the largest file at one megabyte per second. */
    private static final Duration CALL = Duration.ofSeconds(70);

    private S3ClientFactory() {}

    static S3Client of(StoreSettings settings) {
        S3ClientBuilder builder = S3Client.builder()
                .httpClientBuilder(UrlConnectionHttpClient.builder()
                        .connectionTimeout(CONNECT)
                        .socketTimeout(SILENCE))
                .region(Region.of(settings.region()))
                .credentialsProvider(
                        StaticCredentialsProvider.create(AwsBasicCredentials.create(settings.key(), settings.secret())))
                .serviceConfiguration(
                        s3 -> s3.pathStyleAccessEnabled(settings.pathStyle()).chunkedEncodingEnabled(false))
                // some stores do not support the newer check sums; MD5 is sent with a file, and its digest is its name
                .requestChecksumCalculation(RequestChecksumCalculation.WHEN_REQUIRED)
                .responseChecksumValidation(ResponseChecksumValidation.WHEN_REQUIRED)
                .overrideConfiguration(all -> all.apiCallTimeout(CALL).retryStrategy(retry -> retry.maxAttempts(2)));
        if (settings.endpoint() != null) {
            builder.endpointOverride(settings.endpoint());
        }
        return builder.build();
    }
}
