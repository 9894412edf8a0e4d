package org.voltdocket.ui;

import jakarta.servlet.http.HttpServletRequest;
import java.security.Principal;
import java.util.Arrays;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.voltdocket.kernel.Role;

/** Gives every page its frame. */
@ControllerAdvice(annotations = Controller.class)
class PageFrameAdvice {

    @ModelAttribute("frame")
    PageFrame frame(HttpServletRequest request) {
        Principal who = request.getUserPrincipal();
        Role role = who == null
                ? null
                : Arrays.stream(Role.values())
                        .filter(one -> request.isUserInRole(one.name()))
                        .findFirst()
                        .orElse(null);
        return PageFrame.of(who == null ? null : who.getName(), role, request.getRequestURI());
    }
}
