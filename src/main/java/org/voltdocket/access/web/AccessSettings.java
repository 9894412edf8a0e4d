package org.voltdocket.access.web;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * Limits of sign-in and of request bodies, under {@code voltdocket.access} in application.yml.
 *
 * @param sessionLifetime a session ends after this time even when it is used
 * @param signIns sign-in forms that are received at the same time
 * @param signInsPerAddress of them, those from one address
 * @param uploads uploads that are received at the same time
 * @param uploadsPerAccount of them, those of one account
 * @param uploadWait time for which an upload waits for others to end
 * @param bodies other request bodies that are received at the same time
 * @param bodiesPerAccount of them, those of one account
 */
@ConfigurationProperties("voltdocket.access")
record AccessSettings(
        Duration sessionLifetime,
        int signIns,
        int signInsPerAddress,
        int uploads,
        int uploadsPerAccount,
        Duration uploadWait,
        int bodies,
        int bodiesPerAccount) {}
