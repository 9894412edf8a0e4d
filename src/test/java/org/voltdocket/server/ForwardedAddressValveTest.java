package org.voltdocket.server;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ForwardedAddressValveTest {

    private final ForwardedAddressValve valve = new ForwardedAddressValve(List.of("10.0.0.0/8", "fd00::/8"));

    @Test
    void theClientIsTheLastAddressThatIsNoProxy() {
        assertThat(valve.client(List.of("203.0.113.9"), "10.0.0.1")).isEqualTo("203.0.113.9");
        assertThat(valve.client(List.of("198.51.100.1, 203.0.113.9, 10.2.2.2"), "10.0.0.1"))
                .as("the first was sent by the client")
                .isEqualTo("203.0.113.9");
        assertThat(valve.client(List.of("198.51.100.1", "2001:db8::9, fd00::2"), "fd00::1"))
                .isEqualTo("2001:db8::9");
        assertThat(valve.client(List.of(), "10.0.0.1")).isEqualTo("10.0.0.1");
        assertThat(valve.client(List.of("unknown, <script>"), "10.0.0.1")).isEqualTo("10.0.0.1");
        assertThat(valve.client(List.of("10.3.3.3"), "10.0.0.1")).isEqualTo("10.3.3.3");
    }
}
