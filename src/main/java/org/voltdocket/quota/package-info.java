/**
 * Quotas of workshops: uploads, bytes and assessments per day (UTC), and tokens. Refuses requests beyond them and shows a
 * workshop its use before it reaches one.
 *
 * <p>Offers {@code QuotaService}. Start reading there, then at {@code web.QuotaFilter}, which counts requests.
 */
package org.voltdocket.quota;
