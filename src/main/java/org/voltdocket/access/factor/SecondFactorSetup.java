package org.voltdocket.access.factor;

/**
 * A second factor that is about to be set up.
 *
 * @param sealed the key as the form sends it back, encrypted
 * @param key the key in Base 32, in groups of four, to be typed
 * @param image QR code of the key as the address of an image
 */
public record SecondFactorSetup(String sealed, String key, String image) {}
