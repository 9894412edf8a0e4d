package org.voltdocket.returned.sampling;

/** General inspection level (ISO 2859-1, 10.1): II by default, I for about half the sample size, III for more. */
public enum InspectionLevel {
    I,
    II,
    III
}
