package org.voltdocket.access.session;

import java.util.LinkedHashMap;
import java.util.Map;

/** A short name for a browser and its system, from the header {@code User-Agent}, so that people recognise their devices. */
final class BrowserName {

    /** In this order, because each later one is also named by those before it. */
    private static final Map<String, String> BROWSERS = new LinkedHashMap<>();

    private static final Map<String, String> SYSTEMS = new LinkedHashMap<>();

    static {
        BROWSERS.put("Edg/", "Edge");
        BROWSERS.put("OPR/", "Opera");
        BROWSERS.put("Firefox/", "Firefox");
        BROWSERS.put("Chrome/", "Chrome");
        BROWSERS.put("Safari/", "Safari");
        SYSTEMS.put("Android", "Android");
        SYSTEMS.put("iPhone", "iPhone");
        SYSTEMS.put("iPad", "iPad");
        SYSTEMS.put("Windows", "Windows");
        SYSTEMS.put("Mac OS X", "macOS");
        SYSTEMS.put("Linux", "Linux");
    }

    private BrowserName() {}

    static String of(String agent) {
        String browser = first(BROWSERS, agent);
        String system = first(SYSTEMS, agent);
        if (browser.isEmpty()) {
            return agent.length() > 40 ? agent.substring(0, 40) + "…" : agent;
        }
        return system.isEmpty() ? browser : browser + ", " + system;
    }

    private static String first(Map<String, String> names, String agent) {
        return names.entrySet().stream()
                .filter(one -> agent.contains(one.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
    }
}
