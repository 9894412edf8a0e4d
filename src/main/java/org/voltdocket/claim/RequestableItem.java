package org.voltdocket.claim;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.voltdocket.casefile.web.FactFields;
import org.voltdocket.diagnosis.EvidenceKind;

/** Items that can be requested by their identifier: kinds of evidence, then names of facts. */
public final class RequestableItem {

    public static final List<String> ALL = Stream.concat(
                    Arrays.stream(EvidenceKind.values()).map(EvidenceKind::id),
                    FactFields.ALL.stream().map(FactFields.Field::name))
            .toList();

    private RequestableItem() {}
}
