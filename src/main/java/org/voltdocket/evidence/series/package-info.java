/** Reads a part of a recording and decimates it for drawing. Start reading at {@code SeriesReader}. */
package org.voltdocket.evidence.series;
