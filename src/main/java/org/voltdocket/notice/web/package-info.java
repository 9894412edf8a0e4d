/** API and pages of notices, for the distributor only. Start reading at {@code NoticePageController}. */
package org.voltdocket.notice.web;
