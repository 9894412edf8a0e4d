/**
 * Uploads that survive a lost connection and a restart of the server: the protocol tus 1.0.0 with the extensions creation,
 * checksum, expiration and termination (https://tus.io/protocols/resumable-upload). The parts are rows of the database, so that
 * every node continues an upload that another one began; known server libraries keep them in a folder of one machine. Start reading
 * at {@code ResumableUploadService}.
 */
package org.voltdocket.dossier.upload;
