package org.voltdocket.ui;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.ArraySchema;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.IntegerSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.ObjectSchema;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.responses.ApiResponses;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.voltdocket.kernel.CaseNumber;

/** Completes {@code /v3/api-docs}: the problems that any call may answer, and how addresses name cases. */
@Configuration(proxyBeanMethods = false)
class OpenApiConfig {

    private static final String PROBLEM = "Problem";

    static {
        SpringDocUtils.getConfig()
                .replaceWithSchema(
                        CaseNumber.class,
                        new StringSchema()
                                .description("as printed, or as typed")
                                .example("V-0K3-9TF-R"));
    }

    @Bean
    OpenApiCustomizer problemsOfTheApi() {
        return api -> {
            api.getComponents().addSchemas(PROBLEM, problem());
            api.getPaths()
                    .forEach((path, item) -> item.readOperations().forEach(operation -> complete(path, operation)));
        };
    }

    private static Schema<?> problem() {
        Schema<?> error = new ObjectSchema()
                .addProperty("message", new StringSchema())
                .addProperty("line", new IntegerSchema().description("of a file, from 1"))
                .addProperty("column", new IntegerSchema().description("on that line, in characters from 1"))
                .addProperty("field", new StringSchema().description("dotted name of a member"))
                .addProperty("parameter", new StringSchema().description("name of a query parameter"))
                .addProperty("known", new Schema<>().description("what the case says"))
                .addProperty("given", new Schema<>().description("what the request says"));
        return new ObjectSchema()
                .description("What went wrong (RFC 9457).")
                .addProperty(
                        "type",
                        new StringSchema().description("a place in the manual").example("/manual/problems#not-found"))
                .addProperty("title", new StringSchema().description("the kind, the same every time"))
                .addProperty("status", new IntegerSchema())
                .addProperty("detail", new StringSchema().description("what happened, why, what to do next"))
                .addProperty("instance", new StringSchema())
                .addProperty("errors", new ArraySchema().items(error).description("the first 20"))
                .addProperty("moreErrors", new IntegerSchema().description("how many errors are not listed"))
                .addProperty("suggestion", new StringSchema().description("a VIN that may have been misread"))
                .required(List.of("type", "title", "status", "detail"));
    }

    private static void complete(String path, Operation operation) {
        boolean sign = path.equals("/api/v1/tokens");
        Map<String, String> problems = new TreeMap<>();
        problems.put("401", sign ? "user name or password is wrong" : "no token, or an invalid one");
        if (operation.getRequestBody() != null || operation.getParameters() != null) {
            problems.put("400", "the request cannot be read, or a member cannot be right");
        }
        if (path.contains("{")) {
            problems.put("404", "there is none, or not for you");
        }
        if (operation.getRequestBody() != null && !sign) {
            problems.put("403", "your role does not allow it");
        }
        ApiResponses responses = operation.getResponses();
        problems.forEach((status, why) -> {
            if (!responses.containsKey(status)) {
                responses.addApiResponse(status, new ApiResponse().description(why));
            }
        });
        responses.forEach((status, response) -> {
            if (status.startsWith("4")) {
                response.content(new Content()
                        .addMediaType(
                                "application/problem+json",
                                new MediaType().schema(new Schema<>().$ref("#/components/schemas/" + PROBLEM))));
            }
        });
    }
}
