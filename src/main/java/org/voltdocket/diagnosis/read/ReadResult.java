package org.voltdocket.diagnosis.read;

/** What reading a file gave. */
public sealed interface ReadResult permits ParsedFile, RejectedFile {}
