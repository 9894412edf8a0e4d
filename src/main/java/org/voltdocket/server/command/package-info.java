/**
 * Commands that run on the database and exit: verification of trail and evidence, recovery of an administrator.
 */
package org.voltdocket.server.command;
