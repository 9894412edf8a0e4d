package org.voltdocket.evidence;

import java.io.IOException;
import java.io.InputStream;

/** Bytes that can be read from the start as often as needed. */
interface Source {

    InputStream open() throws IOException;
}
