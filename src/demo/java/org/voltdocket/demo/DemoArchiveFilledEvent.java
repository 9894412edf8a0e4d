package org.voltdocket.demo;

/** The demo archive contains all its cases. */
public record DemoArchiveFilledEvent() {}
