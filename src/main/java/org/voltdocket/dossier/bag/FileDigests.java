package org.voltdocket.dossier.bag;

/** A file that went into a bag: where it lies, its size and its digests in hexadecimal. */
record FileDigests(String path, long bytes, String sha256, String sha512) {}
