package org.voltdocket.notice;

import java.util.List;
import org.voltdocket.casefile.CaseFacts;

/** Looks at one case for notices of certain kinds. What it no longer finds is gone. */
interface NoticeFinder {

    List<FinderResult> find(CaseFacts file);
}
