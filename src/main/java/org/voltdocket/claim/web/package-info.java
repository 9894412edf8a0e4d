/**
 * API of claims, their steps, objections and documents; API and pages of limits and working days. Start reading at {@code
 * ClaimApiController}. The forms of the case page are handled by package {@code dossier.web}, which shows that page.
 */
package org.voltdocket.claim.web;
