package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SlotsCommandTest {

  private static final Path HARBOUR = Studio.schedule("harbour-burnout");

  @TempDir private Path dir;
  private Path store;

  @BeforeEach
  void studio() {
    store = dir.resolve("studio.db");
    try (Store open = Store.open(store, Clock.fixed(Run.NOON, ZoneOffset.UTC))) {
      DemoStudio.fill(open);
    }
  }

  private Run slots(Object... args) {
    return slotsAt(Run.NOON, args);
  }

  private Run slotsAt(Instant now, Object... args) {
    List<Object> all = new ArrayList<>(List.of("slots"));
    all.addAll(List.of(args));
    all.addAll(List.of("--kiln", "Anchor", "--store", store));
    return Run.at(now, all.toArray());
  }

  /** The shown file of a right read-back of the harbour burnout in a slot of Gull. */
  private Path shown(int slot) throws IOException {
    JsonNode keyed =
        new ObjectMapper()
            .readTree(
                Run.of(
                        "keying",
                        HARBOUR,
                        "--keypad",
                        Studio.keypad("gull"),
                        "--slot",
                        slot,
                        "--json")
                    .out());
    StringBuilder text = new StringBuilder("slot: " + slot + "\nshown:\n");
    int position = 1;
    String delay = "";
    for (JsonNode value : keyed.get("values")) {
      if (value.get("kind").asText().equals("delay")) {
        delay = value.get("digits").asText();
        continue;
      }
      text.append("  - [%d, \"%s\"]%n".formatted(position++, value.get("digits").asText()));
    }
    text.append("  - [%d, \"%s\"]%n".formatted(position, delay));
    return Files.writeString(dir.resolve("shown.yaml"), text);
  }

  @Test
  void aSlotGoesFromUnknownOverKeyedAndProvenToExpired() throws IOException {
    Run empty = slots("list", "--keypad", "Gull");
    assertThat(empty.err()).isEmpty();
    assertThat(empty.code()).isZero();
    assertThat(empty.out())
        .contains("Slots of Anchor, on Gull", "Not known: 1, 2, 3, 4, 5, 6, 7, 8, 9.");

    Run put = slots("put", HARBOUR, "--keypad", "Gull", "--slot", 3, "--by", "maker");
    assertThat(put.err()).isEmpty();
    assertThat(put.out())
        .contains(
            "What slot 3 holds is not known", "keyed 2 Dec 2026 by the maker", "Never proven.");

    Run prove = slots("prove", HARBOUR, "--shown", shown(3), "--by", "student");
    assertThat(prove.err()).isEmpty();
    assertThat(prove.code()).isZero();
    assertThat(prove.out()).contains("Proven: read back 2 Dec 2026 by the student, today.");

    JsonNode json = new ObjectMapper().readTree(slots("list", "--json").out());
    JsonNode third = json.get("slots").get(2);
    assertThat(third.get("standing").asText()).isEqualTo("good");
    assertThat(third.get("known").asText()).isEqualTo("keyed");
    assertThat(third.get("proof").get("unitFrom").asText()).isEqualTo("fixed");
    assertThat(third.get("proof").get("covers")).isNotEmpty();
    assertThat(json.get("slots").get(0).get("standing").asText()).isEqualTo("never");
    assertThat(json.get("history")).hasSize(2);

    Run cut = slots("tell", "power-cut", "--by", "maker");
    assertThat(cut.out()).contains("expired: the power was cut, told 2 Dec 2026.");
    assertThat(cut.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void aWrongReadBackIsKeptAndEndsWithOne() throws IOException {
    Path shown = shown(3);
    Files.writeString(shown, Files.readString(shown).replace("\"732\"", "\"723\""));
    Run wrong = slots("prove", HARBOUR, "--keypad", "Gull", "--shown", shown, "--by", "student");
    assertThat(wrong.code()).isEqualTo(1);
    assertThat(wrong.out()).contains("it shows '723'", "it showed something else");
    Run right = slots("prove", HARBOUR, "--shown", shown(3), "--by", "student");
    assertThat(right.code()).isZero();
  }

  @Test
  void aNeededSlotIsNotOverwrittenUnlessItWas() {
    slots(
        "tell",
        "needed",
        "--slot",
        3,
        "--what",
        "Thursday class",
        "--until",
        "2026-12-10",
        "--by",
        "teacher",
        "--keypad",
        "Gull");
    Run put = slots("put", HARBOUR, "--slot", 3, "--by", "maker");
    assertThat(put.code()).isEqualTo(2);
    assertThat(put.err())
        .startsWith(
            "--slot: Slot 3 is needed until 10 Dec 2026 (Thursday class): do not overwrite");
    assertThat(slots("put", HARBOUR, "--slot", 3, "--by", "maker", "--anyway").code()).isZero();
    Run later =
        slotsAt(
            Instant.parse("2026-12-12T12:00:00Z"), "put", HARBOUR, "--slot", 3, "--by", "maker");
    assertThat(later.code()).isZero();
  }

  @Test
  void keyingAsksTheRegister() throws IOException {
    Object[] keying = {
      "keying",
      HARBOUR,
      "--keypad",
      Studio.keypad("gull"),
      "--slot",
      3,
      "--kiln",
      "Anchor",
      "--store",
      store
    };
    Run before = Run.of(keying);
    assertThat(before.err()).isEmpty();
    assertThat(before.out())
        .startsWith("register  What slot 3 holds is not known")
        .contains("Of a hundred programs with ", "An estimate, not a promise.", "Wiseman")
        .contains("temp 1");
    slots("prove", HARBOUR, "--keypad", "Gull", "--shown", shown(3), "--by", "student");
    assertThat(Run.of(keying).out().replaceAll("\\s+", " "))
        .contains("Slot 3 already holds this program", "Nothing needs keying")
        .doesNotContain("temp 1"); // no value is keyed again
    String other = Files.readString(Studio.keypad("gull")).replace("slots: 9", "slots: 8");
    keying[3] = Files.writeString(dir.resolve("other.yaml"), other);
    refused(
        Run.of(keying),
        "other.yaml: no keypad on the shelf is described like this one, so it has no register"
            + " there.");
    refused(
        Run.of("keying", HARBOUR, "--keypad", Studio.keypad("gull"), "--slot", 3, "--store", store),
        "--kiln: say which kiln's register in that store.");
  }

  @Test
  void aFoundProgramIsLearned() throws IOException {
    Path found =
        Files.writeString(
            dir.resolve("found.yaml"),
            "slot: 5\nshown: [[1, 1], [2, 732], [3, 100], [4, 90], [5, \"00:30\"]]\n");
    Run learned =
        slots(
            "learn",
            "--keypad",
            "Gull",
            "--shown",
            found,
            "--slot",
            5,
            "--name",
            "Old class",
            "--by",
            "technician");
    assertThat(learned.err()).isEmpty();
    assertThat(learned.out())
        .contains("Old class", "1 segment, top 732 °C", "read once, without a plan");
    Run other = slots("learn", "--shown", found, "--slot", 6, "--by", "technician");
    refused(other, "--slot: 6 is not the slot that found.yaml names (5).");
    Files.writeString(found, "shown: [[1, 40]]\n");
    refused(
        slots("learn", "--shown", found, "--slot", 5, "--by", "technician"),
        "found.yaml: “40” is no number of segments; Gull has 1 to 12.");
    Files.writeString(found, "shown: [[1, \"0.00\"], [2, End]]\n");
    refused(
        slots("learn", "--keypad", "Tern", "--shown", found, "--slot", 2, "--by", "maker"),
        "found.yaml: the unit is missing, and Tern can be in either; add a line such as unit: C.");
  }

  @Test
  void theRegisterIsPrinted() throws IOException {
    Path pdf = dir.resolve("register.pdf");
    Run run = slots("list", "--keypad", "Gull", "--print", pdf, "--paper", "letter");
    assertThat(run.out()).startsWith("Written to ");
    assertThat(new String(Files.readAllBytes(pdf), StandardCharsets.ISO_8859_1))
        .startsWith("%PDF-");
  }

  private static void refused(Run run, String sentence) {
    assertThat(run.err()).isEqualTo(sentence + System.lineSeparator());
    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
  }

  @Test
  void whatIsWrongIsToldInOneSentence() throws IOException {
    refused(
        slots("list"),
        "--keypad: nothing was told yet of Anchor; expected the name of its keypad: "
            + keypads()
            + ".");
    refused(
        slots("list", "--keypad", "Osprey"),
        "--keypad: there is no keypad \"Osprey\" on the shelf; expected " + keypads() + ".");
    refused(
        slots("tell", "power-cut", "--keypad", "Gull", "--by", "Anna"),
        "--by: \"Anna\" is not a role; expected maker, teacher, student, technician, other"
            + " (names are not kept).");
    refused(
        slots("tell", "edited", "--keypad", "Gull", "--by", "maker"),
        "--slot: \"edited\" is of one slot; say which.");
    refused(
        slots("tell", "edited", "--slot", 10, "--keypad", "Gull", "--by", "maker"),
        "--slot: 10 is not a slot of Gull; expected 1 to 9.");
    refused(
        slots("tell", "rules", "--good-for", 0, "--keypad", "Gull", "--by", "maker"),
        "--good-for: 0 is not 1 to 366 days.");
    refused(
        slots("tell", "needed", "--slot", 1, "--keypad", "Gull", "--by", "maker"),
        "--what: say what the program is needed for.");
    refused(
        slots(
            "tell",
            "needed",
            "--slot",
            1,
            "--what",
            "x",
            "--until",
            "soon",
            "--keypad",
            "Gull",
            "--by",
            "maker"),
        "--until: \"soon\" is no date; expected one like 2026-12-10.");
    assertThat(slots("tell", "flood", "--keypad", "Gull", "--by", "maker").err())
        .startsWith("EVENT: \"flood\" is no event; expected power-cut");
    Path shown = shown(3);
    Files.writeString(shown, Files.readString(shown).replace("slot: 3\n", ""));
    refused(
        slots("prove", HARBOUR, "--keypad", "Gull", "--shown", shown, "--by", "maker"),
        "shown.yaml: the slot is missing, and a read-back of an unknown slot proves nothing; add a"
            + " line such as slot: 3.");
    store = dir.resolve("none.db");
    refused(
        slots("list"), store + ": there is no store; heatwright serve makes one, with a shelf.");
    assertThat(store).doesNotExist();
  }

  private String keypads() {
    try (Store open = Store.open(store, Clock.fixed(Run.NOON, ZoneOffset.UTC))) {
      return open.all(Kind.KEYPAD).stream().map(Document::name).collect(Collectors.joining(" or "));
    }
  }
}
