package org.voltdocket.ui;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import org.springframework.core.MethodParameter;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpInputMessage;
import org.springframework.http.MediaType;
import org.springframework.http.converter.HttpMessageConverter;
import org.springframework.web.bind.annotation.ControllerAdvice;
import org.springframework.web.servlet.mvc.method.annotation.RequestBodyAdviceAdapter;
import org.voltdocket.kernel.RequestException;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.databind.json.JsonMapper;

/**
 * Checks a JSON body before it is mapped: no text with a NUL or half of a surrogate pair, and no number that has more than
 * {@value #MOST_DIGITS} characters or lies outside 1e-{@value #LARGEST_EXPONENT} to 1e{@value #LARGEST_EXPONENT}.
 */
@ControllerAdvice
class JsonBodyAdvice extends RequestBodyAdviceAdapter {

    private static final int MOST_DIGITS = 50;
    private static final int LARGEST_EXPONENT = 40;

    private final JsonMapper json;

    JsonBodyAdvice(JsonMapper json) {
        this.json = json;
    }

    @Override
    public boolean supports(MethodParameter parameter, Type type, Class<? extends HttpMessageConverter<?>> converter) {
        return true;
    }

    @Override
    public HttpInputMessage beforeBodyRead(
            HttpInputMessage message,
            MethodParameter parameter,
            Type type,
            Class<? extends HttpMessageConverter<?>> converter)
            throws IOException {
        MediaType kind = message.getHeaders().getContentType();
        if (kind == null || !kind.getSubtype().endsWith("json")) {
            return message;
        }
        byte[] body = message.getBody().readAllBytes();
        check(body);
        return new Checked(body, message.getHeaders());
    }

    private void check(byte[] body) {
        try (JsonParser parser = json.createParser(body)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                boolean text = token == JsonToken.VALUE_STRING || token == JsonToken.PROPERTY_NAME;
                if (text && !TextCheck.isStorable(parser.getString())) {
                    throw invalid(parser, "The text contains a character that cannot be stored, such as NUL");
                }
                if (token.isNumeric() && !isReasonable(parser.getString())) {
                    throw invalid(parser, "The number is too large or has too many digits");
                }
            }
        } catch (StreamConstraintsException e) {
            int depth = json.tokenStreamFactory().streamReadConstraints().getMaxNestingDepth();
            throw RequestException.of(
                            413,
                            "body-too-large",
                            "The JSON body may be nested to a depth of " + depth + ". Nothing was changed.")
                    .with("maxDepth", depth);
        } catch (JacksonException e) {
            // the mapper reports it with its place
        }
    }

    private static boolean isReasonable(String number) {
        if (number.length() > MOST_DIGITS) {
            return false;
        }
        try {
            BigDecimal value = new BigDecimal(number);
            return value.signum() == 0 && Math.abs((long) value.scale()) <= LARGEST_EXPONENT
                    || value.signum() != 0 && Math.abs((long) value.precision() - value.scale()) <= LARGEST_EXPONENT;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    private static RequestException invalid(JsonParser parser, String what) {
        TokenStreamLocation at = parser.currentTokenLocation();
        String field = parser.currentName() == null ? "body" : parser.currentName();
        return RequestException.invalid(
                "malformed-request",
                TextCheck.isStorable(field) ? field : "body",
                what + ": line " + at.getLineNr() + ", column " + at.getColumnNr());
    }

    private record Checked(byte[] body, HttpHeaders headers) implements HttpInputMessage {

        @Override
        public InputStream getBody() {
            return new ByteArrayInputStream(body);
        }

        @Override
        public HttpHeaders getHeaders() {
            return headers;
        }
    }
}
