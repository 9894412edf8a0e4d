/**
 * Links that show the summary of one case to a vehicle owner without an account: they expire, can be revoked, and record each access.
 * Start reading at {@code CaseLinkService}.
 */
package org.voltdocket.dossier.share;
