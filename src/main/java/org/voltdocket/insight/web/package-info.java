/** Pages, tables (CSV) and charts (PNG) of the statistics. Start reading at {@code InsightPageController}. */
package org.voltdocket.insight.web;
