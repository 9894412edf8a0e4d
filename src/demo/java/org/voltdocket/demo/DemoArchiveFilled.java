package org.voltdocket.demo;

/** The demo archive holds its cases, newly filled or from before. */
public record DemoArchiveFilled() {}
