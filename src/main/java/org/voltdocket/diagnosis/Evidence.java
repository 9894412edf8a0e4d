package org.voltdocket.diagnosis;

import java.nio.charset.StandardCharsets;
import java.util.UUID;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Sha256;
import org.voltdocket.kernel.Vin;

/**
 * One item of evidence.
 *
 * @param id identifier that findings refer to
 * @param sha256 digest of the original bytes; fixes the order in which evidence is read
 */
public record Evidence(String id, Sha256 sha256, Origin origin, Reading reading) {

    /** The identifier of a file in the case with these keys: the same file of the same case has the same identifier everywhere. */
    public static UUID id(BatterySerial serial, Vin vin, Sha256 sha256) {
        String key = serial.value() + "|" + vin.value() + "|" + sha256.hex();
        return UUID.nameUUIDFromBytes(key.getBytes(StandardCharsets.UTF_8));
    }
}
