package org.voltdocket.access.signin;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;

/** Networks of clients. */
final class ClientNetwork {

    private ClientNetwork() {}

    /** The network that an address belongs to for comparison: 24 bits of IPv4, 48 of IPv6. */
    static String of(String address) {
        return prefix(address, 24, 48);
    }

    /** The network that counts as one sender: an IPv4 address, 64 bits of IPv6, because one subscriber has them all. */
    static String ofThrottle(String address) {
        return prefix(address, 32, 64);
    }

    private static String prefix(String address, int bits4, int bits6) {
        // a name would be looked up; an address never is
        if (!address.matches("[0-9.]+|[0-9A-Fa-f:.%a-z]*:[0-9A-Fa-f:.%a-z]*")) {
            return address;
        }
        try {
            byte[] bytes =
                    InetAddress.getByName(address.replaceFirst("%.*", "")).getAddress();
            int bits = bytes.length == 4 ? bits4 : bits6;
            Arrays.fill(bytes, bits / 8, bytes.length, (byte) 0);
            return InetAddress.getByAddress(bytes).getHostAddress() + "/" + bits;
        } catch (UnknownHostException e) {
            return address;
        }
    }
}
