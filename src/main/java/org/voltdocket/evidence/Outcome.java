package org.voltdocket.evidence;

/** What reading a file gave. */
sealed interface Outcome permits Parsed, Refused {}
