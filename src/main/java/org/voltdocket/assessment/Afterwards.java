package org.voltdocket.assessment;

import java.util.ArrayDeque;
import java.util.Queue;
import org.springframework.orm.jpa.JpaTransactionManager;

/**
 * Transactions of which something may follow on the same thread, once the connection is given back.
 *
 * <p>An after-commit listener runs while its transaction still holds a connection. Work that needs one of its own must
 * not start there: as soon as there are as many callers as connections, all would wait for each other.
 */
class Afterwards extends JpaTransactionManager {

    private static final long serialVersionUID = 1L;
    private static final ThreadLocal<Queue<Runnable>> WORK = ThreadLocal.withInitial(ArrayDeque::new);
    private static final ThreadLocal<Boolean> AT_WORK = ThreadLocal.withInitial(() -> false);

    /** Does this when the transaction that has just been committed is cleaned up, before its caller goes on. */
    static void run(Runnable work) {
        WORK.get().add(work);
    }

    @Override
    protected void doCleanupAfterCompletion(Object transaction) {
        super.doCleanupAfterCompletion(transaction);
        if (AT_WORK.get()) {
            return; // a transaction of the work itself
        }
        AT_WORK.set(true);
        try {
            Queue<Runnable> work = WORK.get();
            for (Runnable next = work.poll(); next != null; next = work.poll()) {
                next.run();
            }
        } finally {
            AT_WORK.remove();
            WORK.remove();
        }
    }
}
