/** Reads a part of a recording and decimates it for drawing. Start reading at {@code DefaultSeriesService}. */
package org.voltdocket.evidence.series;
