/**
 * Use cases of one returned battery: arrival, assignment to a case, inspection, bench tests, outcome.
 *
 * <p>Start reading at {@link org.voltdocket.returned.service.ReturnService}.
 */
package org.voltdocket.returned.service;
