package org.voltdocket.access;

import org.voltdocket.kernel.Actor;

/**
 * Something about an account, a workshop or a token changed. Published inside the transaction that changes it.
 *
 * @param act what was done, as the trail names it
 * @param subject the account or workshop
 */
public record AccountChanged(Actor actor, String act, String subject) {}
