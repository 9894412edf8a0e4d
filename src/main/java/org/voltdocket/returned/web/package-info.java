/**
 * Returned batteries shown: the API of arrival and outcome ({@code /api/v1/returns}; evidence is taken by {@code dossier.web},
 * whose answers combine more rooms), the pages of returns, pallets and lots ({@code /returns}), and labels. Start reading at
 * {@code ReturnsApi} and {@code ReturnsPage}.
 */
package org.voltdocket.returned.web;
