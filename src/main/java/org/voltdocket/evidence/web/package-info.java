/** Original files and series over HTTP, for pages and scripts. Start reading at {@code EvidenceFilesController}. */
package org.voltdocket.evidence.web;
