package org.voltdocket.assessment.web;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Describes in the API description how an upload of evidence is answered. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ApiResponse(
        responseCode = "201",
        description = "kept",
        content = @Content(schema = @Schema(implementation = EvidenceView.class)))
@ApiResponse(
        responseCode = "200",
        description = "the case already has the same file",
        content = @Content(schema = @Schema(implementation = EvidenceView.class)))
@ApiResponse(responseCode = "413", description = "too large")
@ApiResponse(responseCode = "415", description = "unknown kind of file")
@ApiResponse(responseCode = "422", description = "refused; errors state line, column and reason")
public @interface UploadAnswers {}
