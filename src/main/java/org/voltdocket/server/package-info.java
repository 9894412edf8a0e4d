/**
 * Operation of the server: API description, request ids, licences, masking of VINs in the log.
 *
 * <p>{@code startup} checks the settings and the database and creates the first administrator; {@code limits} bounds the bodies of
 * requests; {@code command} holds the commands that verify the trail and the evidence or recover an administrator; {@code
 * monitoring} the metrics, the health and the page of the server's state. Offers nothing to other packages.
 */
package org.voltdocket.server;
