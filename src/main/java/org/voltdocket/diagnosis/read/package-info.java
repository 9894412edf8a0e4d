/**
 * Reads files: recordings (CSV, RFC 4180), test records (JSON) and documents. A file becomes a {@link org.voltdocket.diagnosis.read.ParsedFile} or a
 * {@link org.voltdocket.diagnosis.read.RejectedFile} with line, column and reason. No Spring, no database. Start reading at
 * {@link org.voltdocket.diagnosis.read.FileReader}.
 */
package org.voltdocket.diagnosis.read;
