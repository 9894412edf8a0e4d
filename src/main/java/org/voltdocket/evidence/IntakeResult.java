package org.voltdocket.evidence;

/** The result of an upload. */
public sealed interface IntakeResult permits Stored, AlreadyStored, Rejected {}
