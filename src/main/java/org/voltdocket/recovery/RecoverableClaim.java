package org.voltdocket.recovery;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.voltdocket.catalogue.Product;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.Money;

/**
 * An approved claim that is in no live list.
 *
 * @param decidedOn day of the approval, UTC
 * @param amount what the distributor pays the workshop
 * @param product empty where the catalogue does not know the serial: no supplier can be asked
 */
public record RecoverableClaim(
        UUID claim,
        CaseNumber number,
        BatterySerial serial,
        LocalDate decidedOn,
        Money amount,
        Optional<Product> product) {}
