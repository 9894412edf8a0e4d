package org.voltdocket.access.rows;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * A method that sees the rows of all workshops even if a workshop's request calls it, such as the assessment, which takes the
 * history of a vehicle into account. The method has to check itself what it tells the caller. Inside a transaction that a
 * workshop's request started, write nothing that is flushed after the method returns.
 */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@Documented
public @interface SeesAllRows {}
