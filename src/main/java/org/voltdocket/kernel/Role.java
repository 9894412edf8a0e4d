package org.voltdocket.kernel;

/** What a signed-in person or token may do. */
public enum Role {
    /** Sees and feeds the cases of its own workshop only. */
    WORKSHOP,
    /** Sees every case and decides claims. */
    CLERK,
    /** Sees every case, books returned batteries and their bench tests. */
    AUDITOR,
    /** All of it, and accounts and rule books. */
    ADMIN
}
