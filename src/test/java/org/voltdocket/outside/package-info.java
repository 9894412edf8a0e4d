/**
 * The work checked against something outside: published data, tables and worked examples. Each check names its source;
 * the values lie in {@code shared/reference} with their origin in the header.
 */
package org.voltdocket.outside;
