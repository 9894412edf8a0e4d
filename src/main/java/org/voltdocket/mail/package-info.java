/**
 * E-mail: messages are stored in an outbox in the caller's transaction and sent by SMTP after its commit.
 *
 * <p>Offers {@link org.voltdocket.mail.Outbox}. Mail is off unless {@code spring.mail.host} names a server. A task of the
 * scheduler sends due messages, one per transaction, and retries those that the mail server did not accept. Messages are plain
 * text; this package knows nothing of cases. Imports {@code kernel} only. Start reading at {@link org.voltdocket.mail.Outbox}.
 */
package org.voltdocket.mail;
