package org.voltdocket.evidence;

import java.io.InputStream;
import org.voltdocket.diagnosis.Origin;

/**
 * A file that is uploaded.
 *
 * @param fileName as the sender names it; only for people to read, never a path and never trusted for the kind
 * @param content read once, to the end or to the limit; the caller closes it
 * @param note what the sender says of it; may be null
 * @param origin where it was taken
 */
public record Upload(String fileName, InputStream content, String note, Origin origin) {}
