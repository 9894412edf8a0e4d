/** Insight shown: pages with charts, tables, CSV and PNG. Start reading at {@code InsightPages}. */
package org.voltdocket.insight.web;
