/**
 * Metrics, health and the page {@code /watch}, which shows the state of the server to an administrator.
 */
package org.voltdocket.server.monitoring;
