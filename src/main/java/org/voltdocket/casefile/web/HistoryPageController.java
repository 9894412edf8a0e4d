package org.voltdocket.casefile.web;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.voltdocket.casefile.CaseListItem;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Vin;

/** A battery or a vehicle across its cases. */
@Controller
class HistoryPageController {

    private final CaseService cases;

    HistoryPageController(CaseService cases) {
        this.cases = cases;
    }

    /** The serial may hold slashes, so it takes the rest of the path. */
    @GetMapping("/history/battery/{*serial}")
    String battery(Actor actor, @PathVariable String serial, Model model) {
        BatterySerial key;
        try {
            key = BatterySerial.parse(serial.substring(1));
        } catch (IllegalArgumentException e) {
            throw RequestException.notFound("battery " + serial.substring(1));
        }
        return show("battery", key.value(), cases.ofBattery(actor, key), model);
    }

    @GetMapping("/history/vehicle/{vin}")
    String vehicle(Actor actor, @PathVariable String vin, Model model) {
        Vin key;
        try {
            key = Vin.parse(vin);
        } catch (IllegalArgumentException e) {
            throw RequestException.notFound("vehicle " + vin);
        }
        model.addAttribute("vin", key);
        return show("vehicle", key.value(), cases.ofVehicle(actor, key), model);
    }

    private static String show(String what, String key, List<CaseListItem> lines, Model model) {
        model.addAttribute("what", what);
        model.addAttribute("key", key);
        model.addAttribute("lines", lines);
        model.addAttribute(
                "others",
                lines.stream()
                        .map(l -> what.equals("battery")
                                ? l.ref().vin().value()
                                : l.ref().serial().value())
                        .distinct()
                        .count());
        return "casefile/history";
    }
}
