/** Notices over HTTP, for the distributor only. Start reading at NoticePage. */
package org.voltdocket.notice.web;
