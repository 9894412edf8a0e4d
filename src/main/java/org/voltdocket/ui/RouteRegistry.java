package org.voltdocket.ui;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** Which addresses this server answers, so that a page links only to what is there. */
@Component
public class RouteRegistry {

    private final ObjectProvider<RequestMappingHandlerMapping> mappings;

    RouteRegistry(ObjectProvider<RequestMappingHandlerMapping> mappings) {
        this.mappings = mappings;
    }

    /** Whether a controller answers this pattern, written as in its mapping. */
    public boolean has(String pattern) {
        return mappings.stream()
                .flatMap(m -> m.getHandlerMethods().keySet().stream())
                .anyMatch(info -> info.getPatternValues().contains(pattern));
    }
}
