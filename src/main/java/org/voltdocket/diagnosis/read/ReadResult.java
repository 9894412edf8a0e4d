package org.voltdocket.diagnosis.read;

/** The result of reading a file. */
public sealed interface ReadResult permits ParsedFile, RejectedFile {}
