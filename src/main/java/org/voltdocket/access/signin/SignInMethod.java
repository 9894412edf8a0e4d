package org.voltdocket.access.signin;

/** How somebody signed in, or tried to. */
public enum SignInMethod {
    PASSWORD,
    /** Password and a time-based code. */
    CODE,
    /** Password and a recovery code. */
    RECOVERY_CODE,
    PASSKEY,
    OPENID,
    /** HTTP Basic for a token. */
    TOKEN_REQUEST
}
