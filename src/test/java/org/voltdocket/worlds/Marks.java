package org.voltdocket.worlds;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.voltdocket.diagnosis.Recording;

/** Notes of a driver about starting and stopping the engine, in four languages. */
public final class Marks {

    private static final String[][] STARTED = {
        {"engine started", "Engine on", "start engine"},
        {"Motor gestartet", "Motor an", "Motorstart"},
        {"moteur démarré", "démarrage moteur", "Moteur en marche"},
        {"motor arrancado", "arranque del motor", "Motor en marcha"}
    };
    private static final String[][] STOPPED = {
        {"engine off", "Engine stopped", "switched engine off"},
        {"Motor aus", "Motor abgestellt", "Motorstopp"},
        {"moteur arrêté", "arrêt moteur", "Moteur coupé"},
        {"motor apagado", "motor parado", "Motor detenido"}
    };
    private static final String[] OTHER = {"traffic light", "Stau", "pluie", "luces encendidas"};

    private Marks() {}

    /**
     * @param fromS trace time of the first row, s; the notes are some seconds late or early
     */
    public static List<Recording.Mark> of(Trace trace, double fromS, double toS, Chance chance) {
        int language = chance.below(4);
        List<Recording.Mark> marks = new ArrayList<>();
        for (Trace.Event event : trace.events()) {
            String[] words = (event.started() ? STARTED : STOPPED)[language];
            String text = words[chance.below(words.length)];
            double at = event.atS() - fromS + 2.5 * chance.normal();
            if (at > 0 && at < toS - fromS && chance.happens(0.9)) {
                marks.add(new Recording.Mark(at, chance.happens(0.2) ? text.toUpperCase(Locale.ROOT) : text));
            }
        }
        if (chance.happens(0.3)) {
            marks.add(new Recording.Mark((toS - fromS) * chance.next(), OTHER[language]));
        }
        marks.sort(Comparator.comparingDouble(Recording.Mark::atS));
        return marks;
    }
}
