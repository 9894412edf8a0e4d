package org.voltdocket.ui;

import jakarta.servlet.http.HttpServletRequest;
import java.security.Principal;
import java.util.Arrays;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;

/** Gives every page its frame. */
@ControllerAdvice(annotations = Controller.class)
class PageFrameAdvice {

    @ModelAttribute("frame")
    PageFrame frame(HttpServletRequest request) {
        Principal who = request.getUserPrincipal();
        String role = who == null
                ? null
                : Arrays.stream(org.voltdocket.kernel.Role.values())
                        .map(Enum::name)
                        .filter(request::isUserInRole)
                        .findFirst()
                        .orElse(null);
        return PageFrame.of(who == null ? null : who.getName(), role, request.getRequestURI());
    }
}
