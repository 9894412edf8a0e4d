package org.voltdocket.evidence;

/** What became of an upload. */
public sealed interface IntakeResult permits Stored, AlreadyStored, Rejected {}
