package org.voltdocket.access.web;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.security.SecurityRequirement;
import io.swagger.v3.oas.annotations.tags.Tag;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.NewToken;
import org.voltdocket.access.TokenService;

@RestController
@Tag(name = "Sign-in")
@RequestMapping("/api/v1/tokens")
class TokenController {

    private final TokenService tokens;

    TokenController(TokenService tokens) {
        this.tokens = tokens;
    }

    /** The name of a new token. */
    record TokenRequest(String name) {}

    @Operation(
            operationId = "createToken",
            summary = "Create a token, with HTTP Basic authentication. It is shown only once.",
            security = @SecurityRequirement(name = "basic"))
    @ApiResponse(responseCode = "201", description = "the token, shown only once")
    @PostMapping
    ResponseEntity<NewToken> create(AccountPrincipal who, @RequestBody TokenRequest request) {
        return ResponseEntity.status(HttpStatus.CREATED)
                .cacheControl(CacheControl.noStore())
                .body(tokens.create(who, request.name()));
    }
}
