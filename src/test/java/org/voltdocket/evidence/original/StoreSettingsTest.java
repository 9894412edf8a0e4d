package org.voltdocket.evidence.original;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.voltdocket.kernel.Sha256;

class StoreSettingsTest {

    private static final Map<String, String> ENVIRONMENT =
            Map.of(StoreSettings.KEY, "who", StoreSettings.SECRET, "hush");

    @Test
    void withoutABucketThereIsNoStore() {
        assertThat(StoreSettings.of("https://store.example.com", "", " ", "", ENVIRONMENT))
                .isEmpty();
    }

    @Test
    void anAddressOfItsOwnNamesTheBucketInThePathUnlessToldOtherwise() {
        StoreSettings own = StoreSettings.of("https://store.example.com:9000/", "", "b", "", ENVIRONMENT)
                .orElseThrow();
        assertThat(own.pathStyle()).isTrue();
        assertThat(own.region()).isEqualTo("us-east-1");
        assertThat(StoreSettings.of("https://store.example.com", "", "b", "false", ENVIRONMENT)
                        .orElseThrow()
                        .pathStyle())
                .isFalse();
        StoreSettings region =
                StoreSettings.of("", "eu-central-1", "b", "", ENVIRONMENT).orElseThrow();
        assertThat(region.endpoint()).isNull();
        assertThat(region.pathStyle()).isFalse();
    }

    @Test
    void whatCannotBeRightIsRefusedWithWhatToDo() {
        assertThatThrownBy(() -> StoreSettings.of("", "", "b", "", Map.of(StoreSettings.KEY, "who")))
                .isInstanceOfSatisfying(
                        InvalidStoreSettingsException.class,
                        refused -> assertThat(refused.action()).contains(StoreSettings.KEY, StoreSettings.SECRET));
        for (String endpoint : new String[] {"store.example.com", "ftp://store.example.com", "https://a.example/b"}) {
            assertThatThrownBy(() -> StoreSettings.of(endpoint, "", "b", "", ENVIRONMENT))
                    .as(endpoint)
                    .isInstanceOf(InvalidStoreSettingsException.class)
                    .hasMessageContaining(endpoint);
        }
    }

    @Test
    void credentialsAreToldToNobody() {
        assertThat(StoreSettings.of("https://store.example.com", "", "b", "", ENVIRONMENT)
                        .orElseThrow()
                        .toString())
                .isEqualTo("https://store.example.com, bucket b");
    }

    @Test
    void anObjectsNameTellsItsDigestAndOthersTellNone() {
        Sha256 digest = Sha256.of(new byte[] {1});
        assertThat(ObjectStore.digest(ObjectStore.name(digest))).isEqualTo(digest);
        assertThat(ObjectStore.digest("originals/zz/" + digest.hex())).isNull();
        assertThat(ObjectStore.digest("originals/readme.txt")).isNull();
    }
}
