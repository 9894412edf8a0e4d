/** The page on personal data. */
package org.voltdocket.privacy.web;
