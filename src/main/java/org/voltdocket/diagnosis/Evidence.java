package org.voltdocket.diagnosis;

import org.voltdocket.kernel.Sha256;

/**
 * One item of evidence as the judge takes it.
 *
 * @param id identifier that findings name it by
 * @param sha256 digest of the original bytes; fixes the order in which evidence is read
 */
public record Evidence(String id, Sha256 sha256, Origin origin, Reading reading) {}
