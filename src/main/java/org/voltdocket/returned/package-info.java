/**
 * Batteries that came back: arrival, bench, which of them are tested, and what the bench found.
 *
 * <p>Offers {@link org.voltdocket.returned.ReturnService} (arrival to outcome), {@link org.voltdocket.returned.PalletService} and {@link
 * org.voltdocket.returned.LotService} (sampling), with the records they take and give, and tells {@link
 * org.voltdocket.returned.OutcomeRecordedEvent}. For {@code AUDITOR} and {@code ADMIN}. Everything noted is appended; the latest row
 * counts. {@code bench} says what the procedure allows when, {@code sampling} which batteries are drawn; both are pure.
 * May import {@code kernel}, {@code diagnosis}, {@code access}, {@code trail}, {@code ui}, {@code paper}, {@code casefile},
 * {@code evidence}, {@code assessment}; not {@code claim}: what an outcome means for a decision is {@code dossier}'s.
 * Start reading at {@link org.voltdocket.returned.ReturnService}.
 */
package org.voltdocket.returned;
