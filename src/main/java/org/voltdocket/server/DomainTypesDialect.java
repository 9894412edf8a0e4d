package org.voltdocket.server;

import java.sql.Types;
import org.hibernate.dialect.PostgreSQLDialect;
import org.hibernate.engine.jdbc.dialect.spi.DialectResolutionInfo;

/**
 * PostgreSQL with the SQL domains of {@code V001__kernel_domains.sql}. JDBC reports a column of a domain as
 * {@link Types#DISTINCT}, which Hibernate's schema validation compares with the type of the attribute and would refuse.
 */
public class DomainTypesDialect extends PostgreSQLDialect {

    public DomainTypesDialect(DialectResolutionInfo info) {
        super(info);
    }

    @Override
    public boolean equivalentTypes(int one, int other) {
        return one == Types.DISTINCT || other == Types.DISTINCT || super.equivalentTypes(one, other);
    }
}
