package org.voltdocket.notice.finder;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseFacts;
import org.voltdocket.catalogue.CatalogueService;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.notice.FinderResult;
import org.voltdocket.notice.NoticeFinder;
import org.voltdocket.notice.NoticeKind;

/** Compares the serial and the day of sale with the produced ranges of the catalogue. */
@Component
class SerialNoticeFinder implements NoticeFinder {

    private final CatalogueService catalogue;

    SerialNoticeFinder(CatalogueService catalogue) {
        this.catalogue = catalogue;
    }

    @Override
    public List<FinderResult> find(CaseFacts file) {
        BatterySerial serial = file.ref().serial();
        List<FinderResult> found = new ArrayList<>();
        catalogue
                .outOfRange(serial)
                .ifPresent(type -> found.add(new FinderResult(
                        NoticeKind.SERIAL_OUT_OF_RANGE,
                        serial.value(),
                        List.of(serial.value(), type.name(), type.code(), type.serialPrefix()),
                        List.of())));
        LocalDate sold = file.facts().battery().soldOn();
        catalogue
                .of(serial)
                .filter(product -> sold != null && sold.isBefore(product.range().producedOn()))
                .ifPresent(product -> found.add(new FinderResult(
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
