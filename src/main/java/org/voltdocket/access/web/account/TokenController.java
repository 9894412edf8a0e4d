package org.voltdocket.access.web.account;

import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.security.SecurityRequirement;
import io.swagger.v3.oas.annotations.tags.Tag;
import jakarta.servlet.http.HttpServletRequest;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpStatus;
import org.springframework.http.ResponseEntity;
import org.springframework.security.core.Authentication;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.access.NewToken;
import org.voltdocket.access.TokenRequest;
import org.voltdocket.access.TokenService;
import org.voltdocket.access.factor.SecondFactorService;
import org.voltdocket.access.session.SecondFactorSignIn;
import org.voltdocket.access.signin.SignInMethod;
import org.voltdocket.access.signin.SignInRecorder;
import org.voltdocket.access.signin.SignInSettings;
import org.voltdocket.access.signin.SignedIn;
import org.voltdocket.kernel.RequestException;

@RestController
@Tag(name = "Sign-in")
@RequestMapping("/api/v1/tokens")
class TokenController {

    private final TokenService tokens;
    private final SecondFactorService factors;
    private final SecondFactorSignIn codes;
    private final SignInSettings settings;
    private final SignInRecorder recorder;

    TokenController(
            TokenService tokens,
            SecondFactorService factors,
            SecondFactorSignIn codes,
            SignInSettings settings,
            SignInRecorder recorder) {
        this.recorder = recorder;
        this.tokens = tokens;
        this.factors = factors;
        this.codes = codes;
        this.settings = settings;
    }

    /** What a new token is for. */
    record NewTokenBody(
            @Schema(description = "purpose of the token, 1 to 80 characters")
            String name,

            @Schema(description = "'upload', 'read' or 'all'; 'all' where it is missing")
            String scope,

            @Schema(description = "1 to 365; 90 where it is missing")
            Integer expiresInDays,

            @Schema(description = "code of the second factor, for an account that has one")
            String code) {}

    @Operation(
            operationId = "createToken",
            summary = "Create a token, with HTTP Basic authentication. It is shown only once.",
            security = @SecurityRequirement(name = "basic"))
    @ApiResponse(responseCode = "201", description = "the token, shown only once")
    @PostMapping
    ResponseEntity<NewToken> create(
            AccountPrincipal who,
            @RequestBody NewTokenBody body,
            @Parameter(hidden = true) Authentication signIn,
            HttpServletRequest request) {
        TokenRequest wanted = TokenRequest.parse(body.name(), body.scope(), body.expiresInDays());
        requireSecondFactor(who, body.code());
        NewToken made = tokens.create(who, wanted);
        int earlier = signIn.getDetails() instanceof SignedIn how ? how.earlierFailures() : 0;
        recorder.succeeded(who, request.getRemoteAddr(), SignInMethod.TOKEN_REQUEST, earlier);
        return ResponseEntity.status(HttpStatus.CREATED)
                .cacheControl(CacheControl.noStore())
                .body(made);
    }

    private void requireSecondFactor(AccountPrincipal who, String code) {
        if (factors.isSetUp(who.account())) {
            if (code == null || codes.verify(who, code).isEmpty()) {
                throw RequestException.of(
                        401,
                        "second-factor-needed",
                        "This account has a second factor. Send its present code as the member 'code', or make the token"
                                + " on the page of the account.");
            }
        } else if (settings.requireSecondFactor().contains(who.actor().role())) {
            throw RequestException.of(
                    403,
                    "second-factor-needed",
                    "This role requires a second factor. Sign in to the pages and set one up, then make the token.");
        }
    }
}
