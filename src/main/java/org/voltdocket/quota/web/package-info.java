/** Counts requests of workshops and shows them their quotas. Start reading at {@code QuotaFilter}. */
package org.voltdocket.quota.web;
