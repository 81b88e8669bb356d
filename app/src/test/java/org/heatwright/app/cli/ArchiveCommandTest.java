package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A studio moves to another machine. */
class ArchiveCommandTest {

  private static final Clock CLOCK = Clock.fixed(Run.NOON, ZoneOffset.UTC);

  @TempDir private Path dir;

  @Test
  void aStudioMoves() throws IOException {
    Path here = dir.resolve("here.db");
    Path there = dir.resolve("there.db");
    Path archive = dir.resolve("studio.zip");
    try (Store store = Store.open(here, CLOCK)) {
      DemoStudio.fill(store);
    }
    Run saved = Run.of("archive", "save", archive, "--store", here);
    assertThat(saved.err()).isEmpty();
    assertThat(saved.code()).isZero();
    Run brought = Run.of("archive", "bring", archive, "--store", there);
    assertThat(brought.err()).isEmpty();
    assertThat(brought.out()).contains("New here:", " 5 logs");
    try (Store store = Store.open(there, CLOCK)) {
      assertThat(store.find(Kind.KILN, "Anchor")).isPresent();
    }
    assertThat(Run.of("archive", "bring", archive, "--store", there).out())
        .contains("All of it was here already.");
    assertThat(Run.of("archive", "save", archive, "--store", here, "--json").out())
        .contains("\"bytes\"");
  }

  @Test
  void whatIsWrongIsToldInASentence() throws IOException {
    Path store = dir.resolve("none.db");
    Path zip = dir.resolve("studio.zip");
    Run noStore = Run.of("archive", "save", zip, "--store", store);
    assertThat(noStore.code()).isEqualTo(2);
    assertThat(noStore.err()).contains("there is no store");
    Files.writeString(zip, "something else");
    Run noArchive = Run.of("archive", "bring", zip, "--store", store);
    assertThat(noArchive.code()).isEqualTo(2);
    assertThat(noArchive.err()).contains("studio.zip", "no archive of a Heatwright store");
    assertThat(store).doesNotExist();
    Run noFile = Run.of("archive", "bring", dir.resolve("gone.zip"), "--store", store);
    assertThat(noFile.code()).isEqualTo(2);
    assertThat(noFile.err()).contains("gone.zip", "there is no such file");
    try (Store made = Store.open(store, CLOCK)) {
      Run kept = Run.of("archive", "save", zip, "--store", made.file());
      assertThat(kept.code()).isEqualTo(2);
      assertThat(Files.readString(zip)).isEqualTo("something else");
    }
  }
}
