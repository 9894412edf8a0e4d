package org.voltdocket.ui.error;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.HttpStatus;
import org.springframework.http.ProblemDetail;
import org.voltdocket.support.Server;
import org.voltdocket.support.ServerTest;

@ServerTest
class ProblemDetailsTest {

    @Autowired
    private Server server;

    @ParameterizedTest
    @ValueSource(ints = {400, 401, 403, 404, 405, 406, 409, 413, 415, 422, 429, 500, 503})
    void everyKindLeadsToItsPlaceInTheManual(int status) {
        ProblemDetail problem = ProblemDetails.of(HttpStatus.valueOf(status), null);
        assertThat(problem.getTitle()).isNotBlank();
        assertThat(problem.getDetail()).isNotBlank();
        assertThat(problem.getType().getPath()).isEqualTo("/manual/problems");
        assertThat(server.anonymous().get("/manual/problems").text())
                .contains("id=\"" + problem.getType().getFragment() + "\"")
                .doesNotContain("??");
    }

    @Test
    void whatIsNotListedIsCounted() {
        ProblemDetail problem = ProblemDetails.withErrors(
                ProblemDetails.of(HttpStatus.UNPROCESSABLE_CONTENT, "Refused."), List.of("a", "b"), 7);
        assertThat(problem.getProperties()).containsEntry("moreErrors", 5L).containsEntry("errors", List.of("a", "b"));
    }
}
