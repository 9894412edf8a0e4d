package org.voltdocket.support;

import com.nimbusds.jose.jwk.JWKSet;
import com.nimbusds.jose.jwk.RSAKey;
import com.nimbusds.jose.jwk.source.ImmutableJWKSet;
import com.nimbusds.jose.jwk.source.JWKSource;
import com.nimbusds.jose.proc.SecurityContext;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.interfaces.RSAPrivateKey;
import java.security.interfaces.RSAPublicKey;
import java.util.Map;
import java.util.Set;
import org.apache.catalina.startup.Tomcat;
import org.springframework.context.annotation.Bean;
import org.springframework.core.annotation.Order;
import org.springframework.core.env.MapPropertySource;
import org.springframework.security.config.Customizer;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configuration.EnableWebSecurity;
import org.springframework.security.config.annotation.web.configuration.OAuth2AuthorizationServerConfiguration;
import org.springframework.security.config.annotation.web.configurers.oauth2.server.authorization.OAuth2AuthorizationServerConfigurer;
import org.springframework.security.core.userdetails.User;
import org.springframework.security.oauth2.core.AuthorizationGrantType;
import org.springframework.security.oauth2.core.ClientAuthenticationMethod;
import org.springframework.security.oauth2.jwt.JwtDecoder;
import org.springframework.security.oauth2.server.authorization.client.InMemoryRegisteredClientRepository;
import org.springframework.security.oauth2.server.authorization.client.RegisteredClient;
import org.springframework.security.oauth2.server.authorization.client.RegisteredClientRepository;
import org.springframework.security.oauth2.server.authorization.settings.AuthorizationServerSettings;
import org.springframework.security.oauth2.server.authorization.settings.ClientSettings;
import org.springframework.security.oauth2.server.authorization.token.JwtEncodingContext;
import org.springframework.security.oauth2.server.authorization.token.OAuth2TokenCustomizer;
import org.springframework.security.provisioning.InMemoryUserDetailsManager;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.authentication.LoginUrlAuthenticationEntryPoint;
import org.springframework.web.context.support.AnnotationConfigWebApplicationContext;
import org.springframework.web.filter.DelegatingFilterProxy;
import org.springframework.web.servlet.DispatcherServlet;

/** An OpenID Connect provider in this process: Spring Authorization Server on a port of its own. */
public final class OpenIdProvider implements AutoCloseable {

    public static final String CLIENT = "voltdocket";
    public static final String SECRET = "secret-of-the-client";
    public static final String PASSWORD = "password-at-the-provider";

    private final Tomcat tomcat = new Tomcat();
    private final AnnotationConfigWebApplicationContext spring = new AnnotationConfigWebApplicationContext();
    private final String issuer;

    /**
     * Starts it.
     *
     * @param claims for each user name the claims of its ID token
     */
    public OpenIdProvider(Path folder, Map<String, Map<String, Object>> claims) throws Exception {
        int port = freePort();
        issuer = "http://localhost:" + port;
        tomcat.setBaseDir(folder.toString());
        tomcat.setPort(port);
        tomcat.getConnector();
        spring.getEnvironment().getPropertySources().addFirst(new MapPropertySource("test", Map.of("issuer", issuer)));
        spring.addBeanFactoryPostProcessor(factory -> factory.registerSingleton("claims", new Claims(claims)));
        spring.register(Settings.class);
        tomcat.addContext("", folder.toString())
                .addServletContainerInitializer(
                        (classes, context) -> {
                            spring.setServletContext(context);
                            spring.refresh();
                            context.addFilter(
                                            "security", new DelegatingFilterProxy("springSecurityFilterChain", spring))
                                    .addMappingForUrlPatterns(null, false, "/*");
                            context.addServlet("pages", new DispatcherServlet(spring))
                                    .addMapping("/");
                        },
                        null);
        tomcat.start();
    }

    /** Allows the client to receive answers at an address. */
    public void allow(String redirect) {
        spring.getBean(RegisteredClientRepository.class).save(client(redirect));
    }

    private static RegisteredClient client(String redirect) {
        return RegisteredClient.withId("1")
                .clientId(CLIENT)
                .clientSecret("{noop}" + SECRET)
                .clientAuthenticationMethod(ClientAuthenticationMethod.CLIENT_SECRET_BASIC)
                .authorizationGrantType(AuthorizationGrantType.AUTHORIZATION_CODE)
                .redirectUri(redirect)
                .scopes(all -> all.addAll(Set.of("openid", "profile")))
                .clientSettings(ClientSettings.builder()
                        .requireAuthorizationConsent(false)
                        .requireProofKey(true)
                        .build())
                .build();
    }

    /** Its address. */
    public String issuer() {
        return issuer;
    }

    private static int freePort() throws IOException {
        try (ServerSocket free = new ServerSocket(0)) {
            return free.getLocalPort();
        }
    }

    @Override
    public void close() throws Exception {
        tomcat.stop();
        tomcat.destroy();
    }

    record Claims(Map<String, Map<String, Object>> byUser) {}

    /** No {@code @Configuration}, so that the scan of the server under test ignores it. */
    @EnableWebSecurity
    static class Settings {

        @Bean
        @Order(1)
        SecurityFilterChain protocol(HttpSecurity http) {
            OAuth2AuthorizationServerConfigurer server = new OAuth2AuthorizationServerConfigurer();
            http.securityMatcher(server.getEndpointsMatcher());
            http.with(server, all -> all.oidc(Customizer.withDefaults()));
            http.authorizeHttpRequests(all -> all.anyRequest().authenticated());
            http.exceptionHandling(all -> all.authenticationEntryPoint(new LoginUrlAuthenticationEntryPoint("/login")));
            return http.build();
        }

        @Bean
        @Order(2)
        SecurityFilterChain pages(HttpSecurity http) {
            http.authorizeHttpRequests(all -> all.anyRequest().authenticated());
            http.formLogin(Customizer.withDefaults());
            return http.build();
        }

        @Bean
        InMemoryUserDetailsManager people(Claims claims) {
            InMemoryUserDetailsManager people = new InMemoryUserDetailsManager();
            claims.byUser()
                    .keySet()
                    .forEach(name -> people.createUser(User.withUsername(name)
                            .password("{noop}" + PASSWORD)
                            .roles("USER")
                            .build()));
            return people;
        }

        @Bean
        RegisteredClientRepository clients() {
            return new InMemoryRegisteredClientRepository(client("http://localhost/none"));
        }

        @Bean
        AuthorizationServerSettings settings(org.springframework.core.env.Environment environment) {
            return AuthorizationServerSettings.builder()
                    .issuer(environment.getRequiredProperty("issuer"))
                    .build();
        }

        @Bean
        JWKSource<SecurityContext> keys() throws Exception {
            KeyPairGenerator generator = KeyPairGenerator.getInstance("RSA");
            generator.initialize(2048);
            KeyPair pair = generator.generateKeyPair();
            return new ImmutableJWKSet<>(new JWKSet(new RSAKey.Builder((RSAPublicKey) pair.getPublic())
                    .privateKey((RSAPrivateKey) pair.getPrivate())
                    .keyID("test")
                    .build()));
        }

        @Bean
        JwtDecoder decoder(JWKSource<SecurityContext> keys) {
            return OAuth2AuthorizationServerConfiguration.jwtDecoder(keys);
        }

        @Bean
        OAuth2TokenCustomizer<JwtEncodingContext> claimsOfTokens(Claims claims) {
            return context -> context.getClaims()
                    .claims(all -> all.putAll(
                            claims.byUser().get(context.getPrincipal().getName())));
        }
    }
}
