package org.voltdocket.evidence.web;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.function.Function;
import org.springframework.web.multipart.MultipartFile;
import org.voltdocket.diagnosis.Origin;
import org.voltdocket.evidence.Upload;

/** Files in multipart requests, for the controllers of all packages that receive evidence. */
public final class MultipartUploads {

    private MultipartUploads() {}

    /** Whether a part of a form has a file; an empty file that has a name counts. */
    public static boolean isPresent(MultipartFile file) {
        return file != null
                && (!file.isEmpty()
                        || !String.valueOf(file.getOriginalFilename()).isEmpty());
    }

    /** The parts of a form that have a file. */
    public static List<MultipartFile> present(List<MultipartFile> files) {
        return files == null
                ? List.of()
                : files.stream().filter(MultipartUploads::isPresent).toList();
    }

    /**
     * Opens a file, passes it to the service that receives it, and closes it.
     *
     * @param note what the sender says about it; null or blank if nothing
     */
    public static <T> T receive(MultipartFile file, String note, Origin origin, Function<Upload, T> service)
            throws IOException {
        try (InputStream content = file.getInputStream()) {
            String text = note == null || note.isBlank() ? null : note;
            return service.apply(new Upload(file.getOriginalFilename(), content, text, origin));
        }
    }
}
