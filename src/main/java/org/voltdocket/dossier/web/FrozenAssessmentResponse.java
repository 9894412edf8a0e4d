package org.voltdocket.dossier.web;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.voltdocket.assessment.AssessmentView;

/** Says in the API's description what a frozen assessment answers. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
@ApiResponse(
        responseCode = "200",
        description = "the assessment",
        content = @Content(schema = @Schema(implementation = AssessmentView.class)))
@interface FrozenAssessmentResponse {}
