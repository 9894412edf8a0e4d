package org.voltdocket.claim.notice;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.casefile.catalogue.Catalogue;
import org.voltdocket.kernel.BatterySerial;

/** Holds the serial and the day of sale against what the catalogue says was produced. */
@Component
class SerialFinder implements NoticeFinder {

    private final Catalogue catalogue;

    SerialFinder(Catalogue catalogue) {
        this.catalogue = catalogue;
    }

    @Override
    public List<Found> find(CaseFacts file) {
        BatterySerial serial = file.ref().serial();
        List<Found> found = new ArrayList<>();
        catalogue
                .outOfRange(serial)
                .ifPresent(type -> found.add(new Found(
                        NoticeKind.SERIAL_OUT_OF_RANGE,
                        serial.value(),
                        List.of(serial.value(), type.name(), type.code(), type.serialPrefix()),
                        List.of())));
        LocalDate sold = file.facts().battery().soldOn();
        catalogue
                .of(serial)
                .filter(product -> sold != null && sold.isBefore(product.range().producedOn()))
                .ifPresent(product -> found.add(new Found(
                        NoticeKind.SOLD_BEFORE_PRODUCED,
                        serial.value(),
                        List.of(
                                sold.toString(),
                                product.range().producedOn().toString(),
                                product.batch(),
                                product.type().code()),
                        List.of())));
        return found;
    }
}
