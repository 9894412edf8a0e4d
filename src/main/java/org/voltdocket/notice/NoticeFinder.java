package org.voltdocket.notice;

import java.util.List;
import org.voltdocket.casefile.CaseFacts;

/** Finds notices of certain kinds in one case. A notice that is not found any more ends. */
public interface NoticeFinder {

    List<FinderResult> find(CaseFacts file);
}
