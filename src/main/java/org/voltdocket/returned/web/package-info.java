/**
 * API of returned batteries ({@code /api/v1/returns}), the pages of returns, pallets and lots ({@code /returns}), and labels.
 * Start reading at {@code ReturnsApiController} and {@code ReturnPageController}.
 */
package org.voltdocket.returned.web;
