/** Pages of the room: the desk, the warranty terms and the working days. */
package org.voltdocket.claim.web;
