/**
 * Charts of the insight pages, drawn with JFreeChart in the fonts and colours of the documents. A chart gets numbers and labels
 * only. Start reading at {@link org.voltdocket.insight.chart.Drawing}.
 */
package org.voltdocket.insight.chart;
