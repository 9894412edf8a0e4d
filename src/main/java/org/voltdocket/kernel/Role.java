package org.voltdocket.kernel;

/** The role of an account or token. Ask for what a role can do, not for the role itself. */
public enum Role {
    /** Sees and edits the cases of its own workshop only. */
    WORKSHOP,
    /** Sees every case and decides claims. */
    CLERK,
    /** Sees every case, receives returned batteries and records their bench tests. */
    AUDITOR,
    /** Everything that the distributor's other roles may do, and accounts and rule books. */
    ADMIN;

    /** Whether it acts for a workshop and sees the workshop's own cases only. */
    public boolean isWorkshop() {
        return this == WORKSHOP;
    }

    /** Whether it may decide claims, answer objections and enter supplier recoveries. */
    public boolean canDecideClaims() {
        return this == CLERK || this == ADMIN;
    }

    /** Whether it may receive and test returned batteries, record outcomes and verify the trail. */
    public boolean canAudit() {
        return this == AUDITOR || this == ADMIN;
    }

    /** Whether it may open cases, edit facts and upload evidence to a case. */
    public boolean canEditCases() {
        return this != AUDITOR;
    }

    /** Whether it may manage accounts, editions of the rule book, warranty terms and settings. */
    public boolean canAdminister() {
        return this == ADMIN;
    }
}
