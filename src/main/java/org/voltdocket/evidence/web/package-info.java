/**
 * Evidence over HTTP: original bytes and series, for scripts by bearer token and for pages by session. Imports its own
 * room's doors and {@code ui}; nobody imports it. Start reading at {@code EvidenceFiles}.
 */
package org.voltdocket.evidence.web;
