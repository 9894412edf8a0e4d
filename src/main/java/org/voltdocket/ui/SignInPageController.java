package org.voltdocket.ui;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;

/** Shows the form; the security filter takes what it posts. */
@Controller
class SignInPageController {

    @GetMapping("/sign-in")
    String form(
            @RequestParam(required = false) String error,
            @RequestParam(name = "wait", required = false) Integer seconds,
            Model model) {
        model.addAttribute("failed", error != null);
        model.addAttribute("seconds", seconds);
        return "ui/sign-in";
    }
}
