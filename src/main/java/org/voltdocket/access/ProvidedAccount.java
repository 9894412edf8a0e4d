package org.voltdocket.access;

import org.voltdocket.kernel.Role;

/**
 * An account as an OpenID provider describes it at each sign-in.
 *
 * @param issuer the provider
 * @param subject the person at the provider, never changed
 * @param name of the account
 * @param workshop name of the workshop; blank for the distributor's roles
 */
public record ProvidedAccount(String issuer, String subject, String name, Role role, String workshop) {}
