package org.voltdocket.diagnosis.read;

import java.io.IOException;
import java.io.InputStream;

/** Bytes that can be read from the start as often as needed. */
public interface ByteSource {

    InputStream open() throws IOException;
}
