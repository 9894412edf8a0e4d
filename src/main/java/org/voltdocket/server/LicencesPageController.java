package org.voltdocket.server;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The page of all third-party components and their licences, from the list that the build generates. */
@Controller
class LicencesPageController {

    private static final String FILE = "META-INF/third-party.txt";

    private final List<Component> components;

    LicencesPageController() throws IOException {
        try (InputStream in = new ClassPathResource(FILE).getInputStream()) {
            this.components = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.isBlank())
                    .map(Component::of)
                    .toList();
        }
    }

    /**
     * A line of the list.
     *
     * @param licences one or more, as the component's project names them
     * @param address of the component's project; empty where it names none
     */
    record Component(String name, String version, String licences, String address) {

        static Component of(String line) {
            String[] cells = line.split("\t", -1);
            return new Component(cells[0], cells[1], cells[2], cells[3].startsWith("http") ? cells[3] : "");
        }
    }

    @GetMapping("/licences")
    String show(Model model) {
        model.addAttribute("components", components);
        return "server/licences";
    }
}
