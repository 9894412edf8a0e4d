package org.voltdocket.server;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.springframework.core.io.ClassPathResource;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;

/** The page of all third-party components and their licences, from the list that the build generates. */
@Controller
class LicencesPageController {

    /** Libraries of the build, and scripts that are kept with the sources because no Maven artifact has them. */
    private static final List<String> FILES = List.of("META-INF/third-party.txt", "META-INF/vendored.txt");

    private final List<Component> components;

    LicencesPageController() throws IOException {
        List<Component> all = new ArrayList<>();
        for (String file : FILES) {
            try (InputStream in = new ClassPathResource(file).getInputStream()) {
                new String(in.readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .filter(line -> !line.isBlank())
                        .map(Component::of)
                        .forEach(all::add);
            }
        }
        this.components = List.copyOf(all);
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
