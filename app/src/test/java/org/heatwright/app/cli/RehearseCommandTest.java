package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class RehearseCommandTest {

  private static final Path HARBOUR = Studio.schedule("harbour-burnout");

  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"tern", "gull", "heron", "petrel", "skua", "dunlin"})
  void theSheetsOwnKeysLeadToThePlan(String keypad) {
    Run run = Run.of("rehearse", HARBOUR, "--keypad", Studio.keypad(keypad), "--slot", 3);

    assertThat(run.code()).as(run.out()).isZero();
    assertThat(run.out()).contains("Slot 3 holds the plan.").doesNotContain("first wrong key");
  }

  @Test
  void theFirstWrongKeyIsMarked() throws IOException {
    Path keys =
        Files.writeString(
            folder.resolve("pressed.txt"), "next 2 s, until 3, next # slot\nuntil 1.00\nnext");

    Run run =
        Run.of("rehearse", HARBOUR, "--keypad", Studio.keypad("tern"), "--slot", 3, "--keys", keys);

    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out())
        .contains("<- first wrong key: start delay took 1.00; it must be 0.00.")
        .contains("Slot 3 does not hold the plan.");
    JsonNode json =
        new ObjectMapper()
            .readTree(
                Run.of(
                        "rehearse",
                        HARBOUR,
                        "--keypad",
                        Studio.keypad("tern"),
                        "--slot",
                        3,
                        "--keys",
                        keys,
                        "--json")
                    .out());
    assertThat(json.get("firstWrong").asInt()).isEqualTo(5);
    assertThat(json.get("holdsPlan").asBoolean()).isFalse();
    assertThat(json.get("keys").get(0).get("key").asText()).isEqualTo("next 2 s");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "next;nxt | pressed.txt, line 2: \"nxt\" is no key; expected a key such as up or next,",
        "7 | pressed.txt, line 1: Tern has no key for \"7\"; its keys are [down, next, up].",
        "next 2 s;until 9 | pressed.txt: The display cannot come to show 9 here.",
        "# nothing | pressed.txt: no key is in it; expected one a line, such as next 2 s."
      })
  void whatIsNoKeyIsTold(String text, String message) throws IOException {
    Path keys = Files.writeString(folder.resolve("pressed.txt"), text.replace(';', '\n'));

    Run run = Run.of("rehearse", HARBOUR, "--keypad", Studio.keypad("tern"), "--keys", keys);

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err().replaceAll("\\s+", " ")).contains(message);
  }
}
