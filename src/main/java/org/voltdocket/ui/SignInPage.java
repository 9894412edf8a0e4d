package org.voltdocket.ui;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** Shows the form; the security filter takes what it posts. */
@Controller
class SignInPage {

    @GetMapping("/sign-in")
    String form() {
        return "ui/sign-in";
    }
}
