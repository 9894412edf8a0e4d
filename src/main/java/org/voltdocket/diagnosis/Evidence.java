package org.voltdocket.diagnosis;

import org.voltdocket.kernel.Sha256;

/**
 * One item of evidence.
 *
 * @param id identifier that findings refer to
 * @param sha256 digest of the original bytes; fixes the order in which evidence is read
 */
public record Evidence(String id, Sha256 sha256, Origin origin, Reading reading) {}
