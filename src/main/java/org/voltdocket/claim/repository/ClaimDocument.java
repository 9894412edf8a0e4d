package org.voltdocket.claim.repository;

import org.voltdocket.claim.DocumentKind;
import org.voltdocket.kernel.Sha256;

/** A document of a decision, as stored. */
public record ClaimDocument(DocumentKind kind, Sha256 sha256, byte[] bytes) {}
