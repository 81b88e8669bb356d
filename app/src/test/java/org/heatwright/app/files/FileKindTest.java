package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.function.BiFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FileKindTest {

  private static final Map<FileKind, BiFunction<String, String, ?>> DOORS =
      Map.of(
          FileKind.KILN, KilnFile::read,
          FileKind.KEYPAD, KeypadFile::read,
          FileKind.SCHEDULE, ScheduleFile::read,
          FileKind.WORK, WorkFile::read,
          FileKind.FIRING, FiringFile::read,
          FileKind.SHOWN, ShownFile::read,
          FileKind.BODY, BodyFile::read,
          FileKind.MATERIAL, MaterialFile::read,
          FileKind.VALUES, ValuesFile::read);

  /** The least that tells each kind. */
  private static final Map<FileKind, String> TEXTS =
      Map.of(
          FileKind.KILN, "name: Anchor\nchamber: {width-mm: 220}\nroom-celsius: 18\n",
          FileKind.KEYPAD, "name: Gull\nunit: {setting: C}\nslots: 9\nsegments: 12\n",
          FileKind.SCHEDULE, "name: f\nunit: C\nsegments: [{rate: 100, target: 500}]\n",
          FileKind.WORK, "kind: burnout\nmoulds: []\n",
          FileKind.FIRING, "room-celsius: 17\nvent: open\n",
          FileKind.SHOWN, "slot: 2\nshown: [[1, \"150\"]]\n",
          FileKind.BODY, "shape: {diameter-mm: 90}\nprobes: [centre]\n",
          FileKind.MATERIAL, "density-kg-m3: 1200\nsource: x\n",
          FileKind.VALUES, "values-for: enamel\nenamel: soft\n");

  @ParameterizedTest
  @EnumSource
  void everyDoorNamesAnotherKindOfFile(FileKind expected) {
    TEXTS.forEach(
        (kind, text) -> {
          if (kind != expected) {
            assertThatThrownBy(() -> DOORS.get(expected).apply(text, "a.yaml"))
                .isInstanceOf(InputException.class)
                .hasMessage(
                    "a.yaml: this looks like %s; %s is expected."
                        .formatted(kind.words(), expected.words()));
          }
        });
  }

  /** A slip in the right kind of file is told as one. */
  @Test
  void aSlipIsNotAnotherKind() {
    assertThatThrownBy(() -> ScheduleFile.read("name: f\nuint: C\nsegments: []\n", "a.yaml"))
        .hasMessageContaining("did you mean unit?");
    assertThatThrownBy(() -> KilnFile.read("nam: f\n", "a.yaml"))
        .hasMessageContaining("did you mean name?");
  }

  /** Whatever a schema requires has a line that shows what would be right. */
  @ParameterizedTest
  @EnumSource
  void everyRequiredKeyHasALine(FileKind kind) throws IOException {
    Path schema =
        Path.of("..", "docs", "schema", kind.name().toLowerCase(Locale.ROOT) + ".schema.json");
    TreeSet<String> required = new TreeSet<>();
    collect(new ObjectMapper().readTree(schema.toFile()), required);
    assertThat(required).isNotEmpty();
    for (String key : required) {
      // Alternatives are never asked for by name: faces of walls, kinds of events.
      if (!key.matches("roof|floor|door|door-.*-s|mains-off-s|element-.*|tip-.*|relay-.*")) {
        assertThat(kind.line(key)).as("%s in %s", key, kind).isPresent();
        assertThat(kind.line(key).orElseThrow()).startsWith(key + ": ");
      }
    }
  }

  private static void collect(JsonNode node, TreeSet<String> required) {
    if (node.path("required").isArray()) {
      node.path("required").forEach(key -> required.add(key.asText()));
    }
    node.forEach(child -> collect(child, required));
  }
}
