/**
 * Mail: notices by e-mail, written to an outbox in the caller's transaction and sent by SMTP after it.
 *
 * <p>Offers {@link org.voltdocket.mail.Outbox}. It is off unless {@code spring.mail.host} names a server. Inside, {@code
 * MailRun} sends what is due, one message a transaction, and tries again later what a server did not take. What is written
 * comes as text: it knows nothing of cases. May import {@code kernel}. Start reading at {@link org.voltdocket.mail.Outbox}.
 */
package org.voltdocket.mail;
