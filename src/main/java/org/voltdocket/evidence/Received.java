package org.voltdocket.evidence;

/** What became of an upload. */
public sealed interface Received permits Kept, Known, Refused {}
