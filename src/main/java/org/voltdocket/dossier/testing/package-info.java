/**
 * Testing at the vehicle and on the bench: which tests are worth doing, how to do them safely, and forms for their values.
 *
 * <p>A form makes a test record as JSON with the origin {@code typed}; the record takes the way of every uploaded file. Start
 * reading at {@code TestFormPageController} and {@code TestGuide}.
 */
package org.voltdocket.dossier.testing;
