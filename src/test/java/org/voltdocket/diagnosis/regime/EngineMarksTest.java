package org.voltdocket.diagnosis.regime;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.voltdocket.diagnosis.Recording.Mark;

/** Marks as drivers write them in four languages. */
class EngineMarksTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "engine started",
                "Engine START",
                "start.",
                "Motor gestartet",
                "motor an!",
                "Moteur d\u00e9marr\u00e9",
                "demarrage moteur",
                "motor arrancado",
                "Motor encendido",
                "Motorstart",
                "contact mis",
                "Moteur en marche"
            })
    void aStartIsReadWhateverTheLanguageCaseAndAccents(String text) {
        assertThat(EngineMarks.started(List.of(new Mark(5, text)))).isTrue();
        assertThat(EngineMarks.stopped(new Mark(5, text))).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "engine off",
                "Engine stopped",
                "Motor aus",
                "abgestellt",
                "moteur arr\u00eat\u00e9",
                "Moteur coup\u00e9",
                "motor apagado",
                "Motorstopp",
                "Motor detenido",
                "switched engine off",
                "Z\u00fcndung aus"
            })
    void aStopIsReadToo(String text) {
        assertThat(EngineMarks.stopped(new Mark(5, text))).isTrue();
        assertThat(EngineMarks.started(List.of(new Mark(5, text)))).isFalse();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lamps on",
                "Licht an",
                "traffic light",
                "engine not started",
                "luces encendidas",
                "on the motorway",
                "stopped at a light",
                ""
            })
    void otherMarksSayNothingAboutTheEngine(String text) {
        assertThat(EngineMarks.started(List.of(new Mark(5, text)))).isFalse();
        assertThat(EngineMarks.stopped(new Mark(5, text))).isFalse();
    }
}
