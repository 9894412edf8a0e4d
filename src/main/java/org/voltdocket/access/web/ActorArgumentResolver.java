package org.voltdocket.access.web;

import java.util.List;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.MethodParameter;
import org.springframework.security.authentication.AuthenticationCredentialsNotFoundException;
import org.springframework.security.core.Authentication;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.bind.support.WebDataBinderFactory;
import org.springframework.web.context.request.NativeWebRequest;
import org.springframework.web.method.support.HandlerMethodArgumentResolver;
import org.springframework.web.method.support.ModelAndViewContainer;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;
import org.voltdocket.access.AccountPrincipal;
import org.voltdocket.kernel.Actor;

/** Hands an {@link Actor} (or, inside this room, the {@link AccountPrincipal}) to every controller that names one. */
@Configuration
class ActorArgumentResolver implements WebMvcConfigurer, HandlerMethodArgumentResolver {

    @Override
    public void addArgumentResolvers(List<HandlerMethodArgumentResolver> resolvers) {
        resolvers.add(this);
    }

    @Override
    public boolean supportsParameter(MethodParameter parameter) {
        return parameter.getParameterType() == Actor.class || parameter.getParameterType() == AccountPrincipal.class;
    }

    @Override
    public Object resolveArgument(
            MethodParameter parameter,
            ModelAndViewContainer container,
            NativeWebRequest request,
            WebDataBinderFactory binders) {
        Authentication now = SecurityContextHolder.getContext().getAuthentication();
        if (now == null || !(now.getPrincipal() instanceof AccountPrincipal who)) {
            throw new AuthenticationCredentialsNotFoundException("Nobody is signed in.");
        }
        return parameter.getParameterType() == Actor.class ? who.actor() : who;
    }
}
