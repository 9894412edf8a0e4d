/**
 * Estimators over many cases, pure arithmetic: no case, no database, no clock, no chance. Each names its source and gives its
 * 95 % interval or is absent. The published answers they are checked against stand in the tests.
 */
package org.voltdocket.insight.estimate;
