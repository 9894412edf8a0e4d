/** The trail for auditors and administrators: what happened, and whether the chain holds. Start reading at TrailPage. */
package org.voltdocket.trail.web;
