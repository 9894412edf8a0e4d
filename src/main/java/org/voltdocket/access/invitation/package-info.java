/** Invitations: links with which the owner of an account sets a password. */
package org.voltdocket.access.invitation;
