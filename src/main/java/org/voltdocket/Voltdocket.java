package org.voltdocket;

import java.time.Clock;
import java.time.Duration;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.context.annotation.Bean;
import org.voltdocket.server.VerifyEvidence;
import org.voltdocket.server.VerifyTrail;

/** Starts the server, or verifies its trail or evidence where {@code --verify-trail} or {@code --verify-evidence} asks for it. */
@SpringBootApplication
public class Voltdocket {

    public static void main(String[] args) {
        if (VerifyTrail.isAsked(args)) {
            System.exit(VerifyTrail.run(System.out, args));
        }
        if (VerifyEvidence.isAsked(args)) {
            System.exit(VerifyEvidence.run(System.out, args));
        }
        SpringApplication.run(Voltdocket.class, args);
    }

    /** The clock of the server. It ticks in microseconds, the resolution of the database, so that a stored time reads back equal. */
    @Bean
    Clock clock() {
        return Clock.tick(Clock.systemUTC(), Duration.ofNanos(1000));
    }
}
