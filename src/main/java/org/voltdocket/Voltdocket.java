package org.voltdocket;

import java.time.Clock;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.context.annotation.Bean;

/** Starts the server. */
@SpringBootApplication
public class Voltdocket {

    public static void main(String[] args) {
        SpringApplication.run(Voltdocket.class, args);
    }

    /** The one clock of the server; tests put their own in its place. */
    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}
