package org.voltdocket.access.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.voltdocket.kernel.RequestException;

class RequestCapacityTest {

    private final RequestCapacity capacity = new RequestCapacity(3, 2, Duration.ofMillis(20));

    @Test
    void oneSenderHasItsLimitAndGetsItBack() {
        RequestCapacity.Permit first = capacity.acquire("shop");
        capacity.acquire("shop");
        assertThatThrownBy(() -> capacity.acquire("shop")).isInstanceOfSatisfying(RequestException.class, refused -> {
            assertThat(refused.status()).isEqualTo(429);
            assertThat(refused.retryAfterSeconds()).isPositive();
        });
        first.close();
        capacity.acquire("shop").close();
    }

    @Test
    void allSendersShareTheOverallLimit() {
        List<RequestCapacity.Permit> permits = new ArrayList<>();
        for (String sender : List.of("a", "b", "c")) {
            permits.add(capacity.acquire(sender));
        }
        assertThatThrownBy(() -> capacity.acquire("d"))
                .isInstanceOfSatisfying(
                        RequestException.class,
                        refused -> assertThat(refused.status()).isEqualTo(503));
        permits.get(0).close();
        capacity.acquire("d").close();
    }
}
