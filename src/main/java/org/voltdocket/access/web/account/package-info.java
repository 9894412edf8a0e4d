/** Pages of sign-in, invitations, one's own account and all accounts; tokens by API. */
package org.voltdocket.access.web.account;
