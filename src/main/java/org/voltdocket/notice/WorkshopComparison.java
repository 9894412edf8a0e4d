package org.voltdocket.notice;

import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Compares every workshop with all others. */
public interface WorkshopComparison {

    /** The notices of each workshop, also of those that have none. */
    Map<UUID, List<FinderResult>> find();
}
