/** Insight shown: pages with charts, tables, CSV and PNG. Start reading at {@code AgreementPage}. */
package org.voltdocket.insight.web;
