package org.voltdocket.access.web.account;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.kernel.Actor;

/** The latest sign-ins, for the administrator. */
@Controller
class SignInsPageController {

    private static final int MOST = 200;

    private final SignInRecorder signIns;

    SignInsPageController(SignInRecorder signIns) {
        this.signIns = signIns;
    }

    @GetMapping("/accounts/sign-ins")
    String list(Actor actor, @RequestParam(defaultValue = "false") boolean unusual, Model model) {
        model.addAttribute("entries", signIns.latest(actor, unusual, MOST));
        model.addAttribute("unusualOnly", unusual);
        model.addAttribute("most", MOST);
        return "access/sign-ins";
    }
}
