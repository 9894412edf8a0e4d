package org.voltdocket.ui.error;

import jakarta.servlet.RequestDispatcher;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.springframework.boot.webmvc.error.ErrorController;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.servlet.ModelAndView;
import org.voltdocket.ui.TextFormatter;

/** What went wrong outside a controller, or on a page. */
@Controller
class ErrorPageController implements ErrorController {

    /** Request attribute with the sentence to show. */
    static final String DETAIL = "voltdocket.detail";

    private final TextFormatter words;

    private final ProblemExceptionHandler advice;

    ErrorPageController(TextFormatter words, ProblemExceptionHandler advice) {
        this.words = words;
        this.advice = advice;
    }

    @RequestMapping("/error")
    Object show(HttpServletRequest request, HttpServletResponse response) {
        HttpStatus status = status(request);
        Object detail = request.getAttribute(DETAIL);
        if (detail == null && status == HttpStatus.CONTENT_TOO_LARGE) {
            detail = advice.tooLarge(); // the container noticed before any controller was asked
        }
        if (!wantsPage(request)) {
            return new ResponseEntity<>(
                    ProblemDetails.completed(ProblemDetails.of(status, detail == null ? null : detail.toString())),
                    status);
        }
        ModelAndView page = new ModelAndView("error");
        page.setStatus(status);
        page.addObject("code", words.knows("error", status.value() + ".title") ? status.value() : "other");
        page.addObject("status", status.value());
        page.addObject("detail", detail);
        return page;
    }

    /** People get the page; the API and scripts, which ask for JSON, get a problem detail. */
    static boolean wantsPage(HttpServletRequest request) {
        Object original = request.getAttribute(RequestDispatcher.ERROR_REQUEST_URI);
        String path = original == null ? request.getRequestURI() : original.toString();
        if (path.startsWith("/api/") || path.equals("/api") || request.getHeader("X-Requested-With") != null) {
            return false;
        }
        String accept = request.getHeader(HttpHeaders.ACCEPT);
        return accept == null || accept.contains("text/html") || !accept.contains("json");
    }

    private static HttpStatus status(HttpServletRequest request) {
        Object code = request.getAttribute(RequestDispatcher.ERROR_STATUS_CODE);
        HttpStatus known = code instanceof Integer number ? HttpStatus.resolve(number) : null;
        return known == null ? HttpStatus.NOT_FOUND : known;
    }
}
