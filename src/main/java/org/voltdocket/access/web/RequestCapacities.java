package org.voltdocket.access.web;

import jakarta.servlet.http.HttpServletRequest;
import java.time.Duration;
import java.util.Locale;
import org.springframework.stereotype.Component;

/** The capacities for request bodies: of the sign-in form, of uploads, and of all others. */
@Component
public class RequestCapacities {

    private final RequestCapacity signIns;
    private final RequestCapacity uploads;
    private final RequestCapacity others;

    RequestCapacities(AccessSettings settings) {
        this.signIns = new RequestCapacity(settings.signIns(), settings.signInsPerAddress(), Duration.ZERO);
        this.uploads = new RequestCapacity(settings.uploads(), settings.uploadsPerAccount(), settings.uploadWait());
        this.others = new RequestCapacity(settings.bodies(), settings.bodiesPerAccount(), Duration.ZERO);
    }

    RequestCapacity signIns() {
        return signIns;
    }

    /** The capacity for a signed-in request with a body. */
    RequestCapacity of(HttpServletRequest request) {
        return isUpload(request.getContentType()) ? uploads : others;
    }

    /** Whether a body of this type holds a file or a part of one. */
    public static boolean isUpload(String contentType) {
        String type = contentType == null ? "" : contentType.toLowerCase(Locale.ROOT);
        return type.startsWith("multipart/") || type.startsWith("application/offset+octet-stream");
    }
}
