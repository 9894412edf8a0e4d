package org.voltdocket.server.startup;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TemporaryDirectoryTest {

    @TempDir
    private Path parent;

    @Test
    void directoriesOfEndedProcessesAreRemovedAndOthersStay() throws Exception {
        Path abandoned = directory("voltdocket-a");
        Path running = directory("voltdocket-b");
        Path foreign = Files.createDirectory(parent.resolve("another-program"));
        try (FileChannel held = FileChannel.open(parent.resolve("voltdocket-b.lock"), StandardOpenOption.WRITE)) {
            assertThat(held.tryLock()).isNotNull();
            TemporaryDirectory.removeAbandoned(parent);
        }
        assertThat(abandoned).doesNotExist();
        assertThat(parent.resolve("voltdocket-a.lock")).doesNotExist();
        assertThat(running.resolve("tomcat/upload.tmp")).exists();
        assertThat(foreign).exists();
    }

    private Path directory(String name) throws Exception {
        Files.createFile(parent.resolve(name + ".lock"));
        Path directory = parent.resolve(name);
        Files.createDirectories(directory.resolve("tomcat"));
        Files.writeString(directory.resolve("tomcat/upload.tmp"), "part of an upload");
        return directory;
    }
}
