package org.voltdocket.casefile;

import java.util.Optional;
import java.util.UUID;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Vin;

/**
 * A case that the one who asked may see.
 *
 * @param workshop the workshop that opened it; empty where the distributor did
 */
public record CaseReference(UUID id, CaseNumber number, BatterySerial serial, Vin vin, Optional<UUID> workshop) {}
