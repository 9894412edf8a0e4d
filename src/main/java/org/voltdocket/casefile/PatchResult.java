package org.voltdocket.casefile;

import java.util.List;

/**
 * Answer to a merge patch.
 *
 * @param file the case as it is now
 * @param ignored dotted names of members that mean nothing here
 */
public record PatchResult(CaseFacts file, List<String> ignored) {}
