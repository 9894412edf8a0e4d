package org.voltdocket.dossier.web;

import java.util.List;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.voltdocket.casefile.CaseLine;
import org.voltdocket.casefile.Cases;
import org.voltdocket.casefile.NotVisible;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.BatterySerial;
import org.voltdocket.kernel.Vin;

/** A battery or a vehicle across its cases. */
@Controller
class HistoryPage {

    private final Cases cases;

    HistoryPage(Cases cases) {
        this.cases = cases;
    }

    /** The serial may hold slashes, so it takes the rest of the path. */
    @GetMapping("/history/battery/{*serial}")
    String battery(Actor actor, @PathVariable String serial, Model model) {
        BatterySerial key;
        try {
            key = BatterySerial.parse(serial.substring(1));
        } catch (IllegalArgumentException e) {
            throw new NotVisible("battery " + serial.substring(1));
        }
        return show("battery", key.value(), cases.ofBattery(actor, key), model);
    }

    @GetMapping("/history/vehicle/{vin}")
    String vehicle(Actor actor, @PathVariable String vin, Model model) {
        Vin key;
        try {
            key = Vin.parse(vin);
        } catch (IllegalArgumentException e) {
            throw new NotVisible("vehicle " + vin);
        }
        model.addAttribute("vin", key);
        return show("vehicle", key.value(), cases.ofVehicle(actor, key), model);
    }

    private static String show(String what, String key, List<CaseLine> lines, Model model) {
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
        return "dossier/history";
    }
}
