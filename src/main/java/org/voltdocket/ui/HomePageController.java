package org.voltdocket.ui;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** The start: the list of cases, which every role has. */
@Controller
class HomePageController {

    @GetMapping("/")
    String home() {
        return "redirect:/cases";
    }
}
