package org.voltdocket.diagnosis.regime;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.voltdocket.diagnosis.Recording.Mark;

/** Reads driver's marks about the engine in English, German, French and Spanish, whatever their case, accents or order. */
final class EngineMarks {

    private static final Pattern STARTED = Pattern.compile(
            "\\b(start\\w*|gestartet|angelassen|motor an|engine on|engine runs|"
                    + "engine running|motor laeuft|motor lauft|demarr\\w*|moteur en marche|arranc\\w*|arranque|encend\\w*|motor en marcha)\\b");
    private static final Pattern STOPPED = Pattern.compile(
            "\\b(engine off|engine stop\\w*|stopped|switched off|motor aus|"
                    + "ausgeschaltet|abgestellt|moteur arret\\w*|moteur coupe|arret moteur|coupe|apagad\\w*|motor parado|motor apagado)\\b");

    private EngineMarks() {}

    /** Whether a mark says that the engine was started or runs. */
    static boolean started(List<Mark> marks) {
        return marks.stream().anyMatch(EngineMarks::started);
    }

    static boolean started(Mark mark) {
        String text = plain(mark.text());
        return STARTED.matcher(text).find() && !STOPPED.matcher(text).find() && !text.contains("not ");
    }

    static boolean stopped(Mark mark) {
        return STOPPED.matcher(plain(mark.text())).find();
    }

    /** Lower case, without accents, punctuation and runs of blanks. */
    private static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", " ")
                .strip();
    }
}
