package org.voltdocket.dossier.bag;

/** A file in a bag: its path, size in bytes and hexadecimal digests. */
record FileDigests(String path, long bytes, String sha256, String sha512) {}
