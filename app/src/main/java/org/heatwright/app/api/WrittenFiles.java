package org.heatwright.app.api;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What a command leaves in its folder beside what it was given. */
final class WrittenFiles {

  private WrittenFiles() {}

  /** Every file in a folder. */
  static Set<Path> in(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.filter(Files::isRegularFile).collect(Collectors.toCollection(TreeSet::new));
    }
  }

  /** Those that were not there before. */
  static List<WrittenFile> since(Set<Path> before, Path folder) throws IOException {
    Set<Path> now = in(folder);
    now.removeAll(before);
    List<WrittenFile> written = new ArrayList<>();
    for (Path file : now) {
      String name = folder.relativize(file).toString().replace('\\', '/');
      written.add(file(name, Files.readAllBytes(file)));
    }
    return List.copyOf(written);
  }

  private static WrittenFile file(String name, byte[] bytes) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return new WrittenFile(name, Optional.of(text), Optional.empty());
    } catch (CharacterCodingException notText) {
      return new WrittenFile(
          name, Optional.empty(), Optional.of(Base64.getEncoder().encodeToString(bytes)));
    }
  }

  /** Takes the folder away with all that is in it. */
  static void remove(Path folder) throws IOException {
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path left, @Nullable IOException e)
              throws IOException {
            Files.delete(left);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
