package org.voltdocket;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;

/** Starts the server. */
@SpringBootApplication
public class Voltdocket {

    public static void main(String[] args) {
        SpringApplication.run(Voltdocket.class, args);
    }
}
