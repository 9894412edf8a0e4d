package org.voltdocket.server.monitoring;

import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.voltdocket.assessment.rerun.ReassessmentService;
import org.voltdocket.kernel.Actor;

/** How the server is: what waits, what was refused, what is slow, how much room is left, when the last backup was. */
@Controller
class WatchPageController {

    private final ServerStatusReader board;
    private final ReassessmentService runs;

    WatchPageController(ServerStatusReader board, ReassessmentService runs) {
        this.board = board;
        this.runs = runs;
    }

    @GetMapping("/watch")
    String show(Actor actor, Model model) {
        model.addAttribute(
                "runs",
                runs.latest(actor).stream().filter(run -> run.state().open()).toList());
        model.addAttribute("board", board.read());
        return "server/watch";
    }
}
