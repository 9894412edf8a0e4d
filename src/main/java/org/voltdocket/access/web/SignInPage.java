package org.voltdocket.access.web;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** The sign-in page; the form itself is handled by the filter chain. */
@Controller
class SignInPage {

    @GetMapping("/sign-in")
    String page(
            @RequestParam(required = false) String failed,
            @RequestParam(required = false) String out,
            @RequestParam(name = "wait", required = false) Long seconds,
            Model model) {
        model.addAttribute("failed", failed != null);
        model.addAttribute("out", out != null);
        model.addAttribute("wait", seconds == null ? null : Math.max(1, Math.min(seconds, 3600)));
        return "access/sign-in";
    }
}
