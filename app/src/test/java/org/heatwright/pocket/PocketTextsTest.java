package org.heatwright.pocket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.pocket.lean.LeanFormatter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What goes into the page comes out of it whole. */
class PocketTextsTest {

  @Test
  void everyKeypadAndProgramOfTheStudioComesBackEqual() {
    try (Store store = Store.temporary(java.time.Clock.systemUTC())) {
      DemoStudio.fill(store);
      List<Document> keypads = store.all(Kind.KEYPAD);
      assertThat(keypads).hasSizeGreaterThanOrEqualTo(5);
      for (Document document : keypads) {
        Keypad keypad = KeypadFile.read(document.text(), document.name());
        assertThat(KeypadText.read(Fields.read(JsonText.write(KeypadText.write(keypad)))))
            .isEqualTo(keypad);
        for (Document schedule : store.all(Kind.SCHEDULE)) {
          FittedProgram program =
              KeypadFit.fit(ScheduleFile.read(schedule.text(), schedule.name()), keypad);
          assertThat(ProgramText.read(Fields.read(JsonText.write(ProgramText.write(program)))))
              .isEqualTo(program);
        }
      }
    }
  }

  @Test
  void anyTextSurvivesJsonAndNeverEndsItsScript() {
    Random random = new Random(5);
    for (int run = 0; run < 2000; run++) {
      StringBuilder text = new StringBuilder();
      for (int i = random.nextInt(12); i > 0; i--) {
        String letters = "a\"\\/<>\n\t\u0000\u2028°–é</script>\ud83d\ude00";
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      String json = JsonText.write(Map.of("t", text.toString()));
      assertThat(json).doesNotContain("<", "\n");
      assertThat(Fields.read(json).text("t")).isEqualTo(text.toString());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "{", "[1,]", "{\"a\":}", "{\"a\" 1}", "\"x", "{} {}", "[1 2]"})
  void whatIsNoJsonIsRefused(String text) {
    assertThatIllegalArgumentException().isThrownBy(() -> JsonText.read(text));
  }

  @Test
  void theLeanFormatterWritesWhatJavasWrites() {
    Random random = new Random(7);
    for (int run = 0; run < 5000; run++) {
      int whole = random.nextInt(20_000);
      double number = Math.round(random.nextDouble() * 1e6) / 1e3;
      String word = "w" + random.nextInt();
      for (String pattern : List.of("%s is %d %%", "%s:%02d", "%s.%s")) {
        assertThat(new LeanFormatter().format(pattern, word, whole).toString())
            .isEqualTo(String.format(Locale.ROOT, pattern, word, whole));
      }
      assertThat(new LeanFormatter().format("%.1f %s", number, number).toString())
          .isEqualTo(String.format(Locale.ROOT, "%.1f %s", number, number));
    }
    assertThatIllegalArgumentException().isThrownBy(() -> new LeanFormatter().format("%5d", 1));
  }
}
