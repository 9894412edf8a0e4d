package org.voltdocket.dossier.web;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.casefile.NotFoundException;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.ClaimService;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;

/** Finds the claims of a case by what addresses name. */
@Component
class CaseClaims {

    private final CaseService cases;
    private final ClaimService claims;

    CaseClaims(CaseService cases, ClaimService claims) {
        this.cases = cases;
        this.claims = claims;
    }

    /** Oldest first. */
    List<Claim> all(Actor actor, CaseNumber number) {
        return claims.all(actor, cases.require(actor, number).id());
    }

    /** Claims before the one that the dossier has. */
    List<Claim> earlier(Actor actor, Dossier dossier) {
        Optional<Claim> latest = dossier.claim();
        if (latest.filter(claim -> claim.place() == 1).isPresent()) {
            return List.of();
        }
        return claims.all(actor, dossier.file().ref().id()).stream()
                .filter(claim ->
                        latest.filter(one -> one.id().equals(claim.id())).isEmpty())
                .toList();
    }

    Claim latest(Actor actor, CaseNumber number) {
        return claims.of(actor, cases.require(actor, number).id())
                .orElseThrow(() -> new NotFoundException("claim of case " + number));
    }

    Claim at(Actor actor, CaseNumber number, int place) {
        return all(actor, number).stream()
                .filter(claim -> claim.place() == place)
                .findFirst()
                .orElseThrow(() -> new NotFoundException("claim " + place + " of case " + number));
    }
}
