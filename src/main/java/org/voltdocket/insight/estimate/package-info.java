/**
 * Estimators as pure functions: no database, clock or randomness. Each names its source and gives a 95 % interval, or is
 * absent where the data do not allow one. Tests compare them with published results.
 */
package org.voltdocket.insight.estimate;
