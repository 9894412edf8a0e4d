package org.voltdocket.dossier.web;

import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Component;
import org.voltdocket.casefile.CaseService;
import org.voltdocket.claim.Claim;
import org.voltdocket.claim.view.ClaimView;
import org.voltdocket.claim.web.CaseEntityTags;
import org.voltdocket.dossier.Dossier;
import org.voltdocket.dossier.DossierService;
import org.voltdocket.dossier.bag.CaseBagExporter;
import org.voltdocket.kernel.Actor;
import org.voltdocket.kernel.CaseNumber;
import org.voltdocket.kernel.RequestException;
import org.voltdocket.kernel.Sha256;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes dossiers as responses with an entity tag. The tag is the version of the facts and a part of the body's digest:
 * a change of facts is checked against the version, and the whole tag says whether anything changed.
 */
@Component
class CaseResponseWriter implements CaseEntityTags {

    private static final Pattern TAG = Pattern.compile("\"(\\d{1,18})-[0-9a-f]{16}\"");

    private final DossierService dossiers;
    private final JsonMapper json;

    CaseResponseWriter(DossierService dossiers, JsonMapper json) {
        this.dossiers = dossiers;
        this.json = json;
    }

    ResponseEntity<byte[]> answer(HttpStatus status, Dossier dossier, List<String> ignored) {
        byte[] body = body(dossier, ignored);
        ResponseEntity.BodyBuilder answer = ResponseEntity.status(status)
                .contentType(MediaType.APPLICATION_JSON)
                .eTag(tag(dossier, body));
        if (status == HttpStatus.CREATED) {
            answer.location(address(dossier.file().ref().number()));
        }
        return answer.body(body);
    }

    /** The case as JSON. */
    byte[] body(Dossier dossier, List<String> ignored) {
        return json.writeValueAsBytes(CaseView.of(dossier, ignored));
    }

    /** The claim as JSON; empty where there is none that the reader may see. */
    Optional<byte[]> claim(Dossier dossier) {
        return dossier.claim()
                .map(claim -> json.writeValueAsBytes(
                        ClaimView.of(dossier.file().ref().number(), claim, dossier.basisChange())));
    }

    /** A claim before the latest, for the bag. */
    CaseBagExporter.Earlier earlier(Dossier dossier, Claim claim) {
        return new CaseBagExporter.Earlier(
                claim, json.writeValueAsBytes(ClaimView.of(dossier.file().ref().number(), claim, Optional.empty())));
    }

    @Override
    public String of(Actor actor, CaseNumber number) {
        Dossier dossier = dossiers.of(actor, number);
        return tag(dossier, body(dossier, null));
    }

    private static String tag(Dossier dossier, byte[] body) {
        return "\"" + dossier.file().version() + "-" + Sha256.of(body).hex().substring(0, 16) + "\"";
    }

    static URI address(CaseNumber number) {
        return URI.create("/api/v1/cases/" + number);
    }

    /** The version of the facts in an {@code If-Match} header; empty where it is absent or {@code *}. */
    static OptionalLong version(String ifMatch) {
        if (ifMatch == null || ifMatch.isBlank() || ifMatch.strip().equals("*")) {
            return OptionalLong.empty();
        }
        Matcher tag = TAG.matcher(ifMatch.strip());
        if (!tag.matches()) {
            throw RequestException.of(
                    412,
                    CaseService.CHANGED_SINCE_READ,
                    "'If-Match' is not an ETag of this case. Nothing was changed: read the case and send its ETag.");
        }
        return OptionalLong.of(Long.parseLong(tag.group(1)));
    }
}
