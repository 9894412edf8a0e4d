package org.voltdocket.claim;

import org.voltdocket.kernel.Sha256;

/** A paper of a decision, as kept. */
public record ClaimDocument(DocumentKind kind, Sha256 sha256, byte[] bytes) {}
