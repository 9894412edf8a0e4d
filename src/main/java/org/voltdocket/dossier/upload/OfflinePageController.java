package org.voltdocket.dossier.upload;

import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** The page that a device keeps for the time without a connection. */
@Controller
class OfflinePageController {

    @GetMapping("/offline")
    String show() {
        return "upload/offline";
    }
}
