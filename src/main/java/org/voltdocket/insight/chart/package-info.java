/**
 * Charts of the insight pages, drawn by JFreeChart with the document's own fonts and inks. A chart gets numbers and words; it
 * knows no case. Start reading at {@link org.voltdocket.insight.chart.Drawing}.
 */
package org.voltdocket.insight.chart;
