/**
 * Personal data: retention periods, legal holds, erasure, and export of what is stored about a vehicle. Start reading at
 * {@code ErasureService}; each table is erased by a function of its own package's migration.
 */
package org.voltdocket.privacy;
