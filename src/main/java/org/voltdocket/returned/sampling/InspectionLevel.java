package org.voltdocket.returned.sampling;

/** General inspection level (ISO 2859-1, 10.1): II where nothing else is said, I for about half of it, III for more. */
public enum InspectionLevel {
    I,
    II,
    III
}
