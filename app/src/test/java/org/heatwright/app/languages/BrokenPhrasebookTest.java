package org.heatwright.app.languages;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A book one of whose files is broken: the others speak on, and what is wrong is said once. */
class BrokenPhrasebookTest {

  private final List<String> said = new ArrayList<>();

  private Phrasebook book(byte[] kilns) {
    return Phrasebook.read(
        Language.GERMAN,
        name ->
            switch (name) {
              case "topics.txt" -> bytes("words.txt\nkilns.txt\n");
              case "words.txt" -> bytes("to\n  bis\n\nThe kiln is cold.\n  Der Ofen ist kalt.\n");
              default -> new ByteArrayInputStream(kilns);
            },
        said::add);
  }

  private static ByteArrayInputStream bytes(String text) {
    return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
  }

  private void leftOut(String kilns, String complaint) {
    leftOut(kilns.getBytes(StandardCharsets.UTF_8), complaint);
  }

  private void leftOut(byte[] kilns, String complaint) {
    Phrasebook book = book(kilns);
    assertThat(said)
        .containsExactly(complaint + " The bench says what this file is about in English.");
    assertThat(book.said("The kiln is cold.")).isEqualTo("Der Ofen ist kalt.");
    assertThat(book.said("Heat it.")).isEqualTo("Heat it.");
  }

  @Test
  void aWholeFileIsUsed() {
    assertThat(book("Heat it.\n  Heizen.\n".getBytes(StandardCharsets.UTF_8)).said("Heat it."))
        .isEqualTo("Heizen.");
    assertThat(said).isEmpty();
  }

  @Test
  void aTranslationWithoutEnglish() {
    leftOut(
        "Heat it.\n  Heizen.\n  Heize.\n",
        "languages/de/kilns.txt line 3: no English line stands before this translation; write it"
            + " above.");
  }

  @Test
  void englishWithoutATranslation() {
    leftOut(
        "Heat it.\n  Heizen.\n\nCool it.\n",
        "languages/de/kilns.txt line 4: this English line has no translation; write it below, two"
            + " spaces in.");
  }

  @Test
  void otherHoles() {
    leftOut(
        "Heat it.\n  Heizen.\nTo {0#}\n  Auf {1#}\n",
        "languages/de/kilns.txt line 4: the translation has other holes than the English line; both"
            + " need the same ones.");
  }

  @Test
  void aHoleWithoutAUsableNumber() {
    leftOut(
        "To {99999999999#}\n  Auf {99999999999#}\n",
        "languages/de/kilns.txt line 2: the number of a hole is too large; count from 0.");
  }

  @Test
  void noUtf8() {
    leftOut(
        "Heat it.\n  Heizen für heute.\n".getBytes(StandardCharsets.ISO_8859_1),
        "languages/de/kilns.txt line 2: this is no UTF-8; save the file as UTF-8.");
  }

  @Test
  void aMissingFile() {
    Phrasebook book =
        Phrasebook.read(
            Language.GERMAN,
            name -> name.equals("topics.txt") ? bytes("words.txt\n") : null,
            said::add);
    assertThat(said)
        .containsExactly(
            "languages/de/words.txt: the file is missing; build the bench again. The bench says"
                + " what this file is about in English.");
    assertThat(book.said("The kiln is cold.")).isEqualTo("The kiln is cold.");
  }

  @Test
  void nothingCanBeRead() {
    Phrasebook book =
        Phrasebook.read(
            Language.GERMAN,
            name -> {
              throw new IOException("worn out");
            },
            said::add);
    assertThat(said)
        .containsExactly(
            "languages/de/topics.txt: it cannot be read (worn out); build the bench again. The bench"
                + " says everything in English.");
    assertThat(book.said("The kiln is cold.")).isEqualTo("The kiln is cold.");
  }
}
