/** Catalogue of battery types and serial ranges: its page and its API. */
package org.voltdocket.catalogue.web;
