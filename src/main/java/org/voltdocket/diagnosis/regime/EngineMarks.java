package org.voltdocket.diagnosis.regime;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.voltdocket.diagnosis.Recording.Mark;

/** Reads driver's marks about the engine in English, German, French and Spanish, whatever their case, accents or order. */
final class EngineMarks {

    private static final Pattern ENGINE =
            Pattern.compile("\\b(engine|motor|moteur|ignition|zundung|zuendung|contact|contacto)\\b");
    private static final Pattern STARTED =
            Pattern.compile("\\b(start\\w*|on|runs|running|gestartet|angelassen|an|lauft|laeuft|ein"
                    + "|demarr\\w*|en marche|mis|arranc\\w*|arranque|en marcha|encend\\w*)\\b");
    private static final Pattern STOPPED = Pattern.compile("\\b(off|stop\\w*|aus|abgestellt|ausgeschaltet|gestoppt"
            + "|arret\\w*|coupe\\w*|eteint\\w*|apag\\w*|parad\\w*|deten\\w*)\\b");
    private static final Pattern ALONE =
            Pattern.compile("start(ed)?|gestartet|angelassen|demarrage|demarre|arranque|arrancado");
    private static final Pattern ALONE_STOPPED =
            Pattern.compile("(switched|turned) off|abgestellt|ausgeschaltet|arret|coupe|apagado");
    private static final Pattern NEGATED = Pattern.compile("\\b(not|no|never|nicht|kein\\w*|pas|ne)\\b");

    private EngineMarks() {}

    /** Whether a mark says that the engine was started or runs. */
    static boolean started(List<Mark> marks) {
        return marks.stream().anyMatch(EngineMarks::started);
    }

    static boolean started(Mark mark) {
        return says(mark, ALONE, STARTED, STOPPED);
    }

    static boolean stopped(Mark mark) {
        return says(mark, ALONE_STOPPED, STOPPED, STARTED);
    }

    /** Whether a mark names the engine with a word of one kind and none of the other, or is such a word alone. */
    private static boolean says(Mark mark, Pattern alone, Pattern word, Pattern other) {
        String text = plain(mark.text());
        if (NEGATED.matcher(text).find()) {
            return false;
        }
        boolean engine = ENGINE.matcher(text).find();
        return alone.matcher(text).matches()
                || engine && word.matcher(text).find() && !other.matcher(text).find();
    }

    /** Lower case, without accents, punctuation and runs of blanks; compounds of the engine taken apart. */
    private static String plain(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFD)
                .replaceAll("\\p{M}", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", " ")
                .replaceAll("\\bmotor(start|stop)", "motor $1")
                .strip();
    }
}
