/**
 * API of claims, their steps, evidence requests, objections and documents; API and pages of limits and working days. Start
 * reading at {@code ClaimApiController}. The forms of the case page are handled by package {@code dossier.web}: where a form is
 * refused, they show the whole case again, which is assembled there.
 */
package org.voltdocket.claim.web;
