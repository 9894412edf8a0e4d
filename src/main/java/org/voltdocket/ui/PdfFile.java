package org.voltdocket.ui;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** Says in the API's description what every printed document answers. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ApiResponse(
        responseCode = "200",
        description = "the document; Repr-Digest and ETag carry its SHA-256",
        content = @Content(mediaType = "application/pdf", schema = @Schema(type = "string", format = "binary")))
@ApiResponse(responseCode = "304", description = "you have these bytes already (If-None-Match)")
public @interface PdfFile {}
