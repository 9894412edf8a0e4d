/** Filter chains, sign-in, account pages, tokens by API, and the {@code Actor} parameter of every controller. */
package org.voltdocket.access.web;
