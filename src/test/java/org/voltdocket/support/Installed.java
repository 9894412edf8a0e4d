package org.voltdocket.support;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Assumptions;

/** Programs that a person's machine may lack and the build's machine may not. */
public final class Installed {

    private Installed() {}

    /**
     * Skips the test where something is not there; fails it where {@code CI} is set, for there {@code .ci/run} installs
     * what tests need.
     *
     * @param missing what is not there, and how it comes there
     */
    public static void require(boolean there, String missing) {
        if (System.getenv("CI") != null) {
            assertThat(there).as(missing).isTrue();
        }
        Assumptions.assumeTrue(there, missing);
    }
}
