package org.voltdocket;

import java.time.Clock;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.context.annotation.Bean;
import org.voltdocket.kernel.MicrosecondClock;
import org.voltdocket.server.command.CopyOriginals;
import org.voltdocket.server.command.MigrateDatabase;
import org.voltdocket.server.command.RecoverAdministrator;
import org.voltdocket.server.command.VerifyEvidence;
import org.voltdocket.server.command.VerifyTrail;
import org.voltdocket.server.startup.TemporaryDirectory;

/** Starts the server, or runs the command that an option names: migration, verification of trail or evidence, recovery of an administrator. */
@SpringBootApplication
public class Voltdocket {

    public static void main(String[] args) {
        if (VerifyTrail.isAsked(args)) {
            System.exit(VerifyTrail.run(System.out, args));
        }
        if (VerifyEvidence.isAsked(args)) {
            System.exit(VerifyEvidence.run(System.out, args));
        }
        if (RecoverAdministrator.isAsked(args)) {
            System.exit(RecoverAdministrator.run(System.out, args));
        }
        if (MigrateDatabase.isAsked(args)) {
            System.exit(MigrateDatabase.run(System.out, args));
        }
        if (CopyOriginals.isAsked(args)) {
            System.exit(CopyOriginals.run(System.out, args));
        }
        TemporaryDirectory.claim();
        SpringApplication.run(Voltdocket.class, args);
    }

    @Bean
    Clock clock() {
        return MicrosecondClock.utc();
    }
}
