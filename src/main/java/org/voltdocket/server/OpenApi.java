package org.voltdocket.server;

import io.swagger.v3.oas.models.Components;
import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.info.Info;
import io.swagger.v3.oas.models.info.License;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import io.swagger.v3.oas.models.security.SecurityScheme;
import io.swagger.v3.oas.models.servers.Server;
import java.util.List;
import org.springdoc.core.utils.SpringDocUtils;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.kernel.Actor;

/** The head of the published API description; its body is read off the controllers. */
@Configuration(proxyBeanMethods = false)
class OpenApi {

    static {
        // who acts comes from the token, not from the request
        SpringDocUtils.getConfig().addRequestWrapperToIgnore(Actor.class, AccountPrincipal.class);
    }

    @Bean
    OpenAPI description() {
        SecurityScheme bearer = new SecurityScheme()
                .type(SecurityScheme.Type.HTTP)
                .scheme("bearer")
                .description("A token from POST /api/v1/tokens, good for 90 days.");
        SecurityScheme basic = new SecurityScheme()
                .type(SecurityScheme.Type.HTTP)
                .scheme("basic")
                .description("Makes tokens only.");
        return new OpenAPI()
                .info(new Info()
                        .title("Voltdocket")
                        .version("1")
                        .description("One case file per battery serial and VIN, with an assessment of its evidence.")
                        .license(new License().name("Apache-2.0").identifier("Apache-2.0")))
                .servers(List.of(new Server().url("/")))
                .components(
                        new Components().addSecuritySchemes("bearer", bearer).addSecuritySchemes("basic", basic))
                .addSecurityItem(new SecurityRequirement().addList("bearer"));
    }
}
