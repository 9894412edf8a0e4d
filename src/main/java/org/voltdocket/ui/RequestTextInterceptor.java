package org.voltdocket.ui;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Arrays;
import java.util.Collection;
import java.util.Optional;
import org.springframework.context.annotation.Configuration;
import org.springframework.web.method.HandlerMethod;
import org.springframework.web.multipart.MultipartFile;
import org.springframework.web.multipart.MultipartHttpServletRequest;
import org.springframework.web.servlet.HandlerInterceptor;
import org.springframework.web.servlet.config.annotation.InterceptorRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.voltdocket.kernel.RequestException;

/**
 * Refuses parameters, form fields and file names that contain a NUL or half of a surrogate pair, as {@link JsonBodyAdvice} does
 * for JSON, and a second file where a route takes one.
 */
@Configuration(proxyBeanMethods = false)
class RequestTextInterceptor implements HandlerInterceptor, WebMvcConfigurer {

    @Override
    public void addInterceptors(InterceptorRegistry registry) {
        registry.addInterceptor(this);
    }

    @Override
    public boolean preHandle(HttpServletRequest request, HttpServletResponse response, Object handler) {
        invalidParameter(request).or(() -> invalidFileName(request)).ifPresent(field -> {
            throw RequestException.invalid(
                    "malformed-request", field, "The value contains a character that cannot be stored, such as NUL");
        });
        refuseSecondFile(request, handler);
        return true;
    }

    /** A route that takes one file must not ignore a second one. */
    private static void refuseSecondFile(HttpServletRequest request, Object handler) {
        if (request instanceof MultipartHttpServletRequest upload
                && handler instanceof HandlerMethod method
                && Arrays.stream(method.getMethodParameters())
                        .anyMatch(one -> one.getParameterType() == MultipartFile.class)) {
            upload.getMultiFileMap().forEach((name, files) -> {
                if (files.size() > 1) {
                    throw RequestException.invalid(
                            "malformed-request",
                            TextCheck.isStorable(name) ? name : "a name",
                            "The request has " + files.size()
                                    + " files in parts of this name; it takes one. Nothing was stored. Send each in a request"
                                    + " of its own.");
                }
            });
        }
    }

    private static Optional<String> invalidParameter(HttpServletRequest request) {
        return request.getParameterMap().entrySet().stream()
                .filter(one -> !TextCheck.isStorable(one.getKey())
                        || !Arrays.stream(one.getValue()).allMatch(TextCheck::isStorable))
                .map(one -> TextCheck.isStorable(one.getKey()) ? one.getKey() : "a name")
                .findFirst();
    }

    private static Optional<String> invalidFileName(HttpServletRequest request) {
        if (!(request instanceof MultipartHttpServletRequest upload)) {
            return Optional.empty();
        }
        return upload.getMultiFileMap().values().stream()
                .flatMap(Collection::stream)
                .filter(file -> file.getOriginalFilename() != null && !TextCheck.isStorable(file.getOriginalFilename()))
                .map(MultipartFile::getName)
                .findFirst();
    }
}
