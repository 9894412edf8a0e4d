package org.voltdocket.diagnosis.read;

import java.io.IOException;
import java.io.InputStream;

/** Bytes that can be read several times. */
public interface ByteSource {

    InputStream open() throws IOException;
}
