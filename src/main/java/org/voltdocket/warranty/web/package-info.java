/** Page of the warranty terms. */
package org.voltdocket.warranty.web;
