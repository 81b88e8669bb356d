package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class YamlFileTest {

  private static YamlMap read(String text) {
    return YamlFile.read(text, "a.yaml", FileKind.KILN);
  }

  @Test
  void wordsThatOlderYamlTookForTruthValuesAreText() {
    YamlMap map = read("a: no\nb: off\nc: y\nd: 2:00\ne: 2026-09-02\n");

    assertThat(map.required("a").text()).isEqualTo("no");
    assertThat(map.required("b").text()).isEqualTo("off");
    assertThat(map.required("c").text()).isEqualTo("y");
    assertThat(map.required("d").hourMinute()).hasMinutes(120);
    assertThat(map.required("e").date()).isEqualTo("2026-09-02");
  }

  @ParameterizedTest
  @CsvSource({"120, 120", "1e3, 1000", "+5, 5", ".5, 0.5", "5., 5", "-0, 0", "0120, 120"})
  void numbersAreDecimal(String written, double meant) {
    assertThat(read("n: " + written).required("n").number()).isEqualTo(meant);
  }

  @ParameterizedTest
  @ValueSource(strings = {".nan", ".inf", "-.inf", "NaN", "Infinity", "0x10", "1_000", "1,5", "~"})
  void whatIsNoFiniteDecimalNumberIsRefused(String written) {
    Inputs.refused(
        () -> read("n: " + written).required("n").number(),
        "a.yaml, line 1: n is \"%s\"; expected a number.".formatted(written));
  }

  @Test
  void aNumberTooLargeForADoubleIsRefused() {
    Inputs.refused(
        () -> read("n: 1e999").required("n").above0("W"),
        "a.yaml, line 1: n is 1e999; expected a number above zero (W).");
  }

  @Test
  void aNumberInQuotesIsTold() {
    Inputs.refused(
        () -> read("n: \"12\"").required("n").number(),
        "a.yaml, line 1: n is \"12\"; expected a number, without quotes.");
  }

  @Test
  void aNameThatLooksLikeANumberNeedsQuotes() {
    Inputs.refused(
        () -> read("name: 7").required("name").text(),
        "a.yaml, line 1: name is 7; expected text; write it in quotes: \"7\".");
  }

  @Test
  void anUnknownKeyIsRefusedWithTheNearestKnownOne() {
    Inputs.refused(
        () -> read("name: x\ncontrol:\n  knid: pid\n").required("control").map("kind", "cycle-s"),
        "a.yaml, line 3: control.knid is not known; expected one of kind, cycle-s"
            + " (did you mean kind?).");
  }

  @Test
  void notesMayHoldAnything() {
    YamlMap map = read("name: x\nnotes: {anything: [1, {deep: yes}]}\n").only("name");

    assertThat(map.required("name").text()).isEqualTo("x");
  }

  @Test
  void aKeyGivenTwiceIsRefused() {
    Inputs.refused(
        () -> read("name: x\nunit: C\nname: y\n"),
        "a.yaml, line 3: name is given twice (first on line 1); keep one.");
  }

  @Test
  void tabsAreNamed() {
    Inputs.refused(
        () -> read("name: x\nwalls:\n\t- a\n"),
        "a.yaml, line 3: the line is indented with a tab; YAML wants spaces there.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "\n\n", "# only a remark\n"})
  void anEmptyFileIsRefused(String text) {
    Inputs.refused(
        () -> read(text),
        "a.yaml: the file is empty; expected keys and values, such as name: Anchor.");
  }

  @Test
  void theTopMustBeAMapping() {
    Inputs.refused(
        () -> read("- a\n- b\n"),
        "a.yaml, line 1: the file is a list; expected a mapping (keys with values).");
    Inputs.refused(
        () -> read("just words"),
        "a.yaml, line 1: the file is \"just words\"; expected a mapping (keys with values).");
  }

  @Test
  void brokenYamlNamesItsLine() {
    assertThatThrownBy(() -> read("name: x\nsegments: [1, 2\nunit: C\n"))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("a.yaml, line 3: this is not YAML: ");
  }

  @Test
  void aliasesAreRefusedBeforeTheyCanGrow() {
    Inputs.refused(
        () -> read("a: &x [1]\nb: *x\n"),
        "a.yaml, line 2: the alias *x is not supported; write the value out.");
  }

  @Test
  void deepNestingIsRefused() {
    Inputs.refused(
        () -> read("a: " + "[".repeat(100_000)),
        "a.yaml, line 1: values are nested more than 20 deep; no file of ours is.");
  }

  @Test
  void aSecondDocumentIsRefused() {
    assertThatThrownBy(() -> read("a: 1\n---\na: 2\n"))
        .isInstanceOf(InputException.class)
        .hasMessageStartingWith("a.yaml, line 2: a second document begins here; expected one");
  }

  @Test
  void controlCharactersAreNamed() {
    Inputs.refused(
        () -> read("a: 1\nb: \u0007\n"),
        "a.yaml, line 2: the character U+0007 is not allowed in YAML; remove it.");
  }

  @Test
  void aKeyThatIsAListIsRefused() {
    Inputs.refused(
        () -> read("? [a]\n: 1\n"),
        "a.yaml, line 1: a key is a list or a mapping; expected a plain word.");
  }

  @Test
  void textThatIsNotUtf8NamesTheLine(@TempDir Path dir) throws IOException {
    Path file = dir.resolve("kiln.yaml");
    Files.write(file, "name: x\nroom: caf\u00e9\n".getBytes(StandardCharsets.ISO_8859_1));

    Inputs.refused(
        () -> TextFile.yaml(file),
        "kiln.yaml, line 2: the text is not UTF-8; save the file as UTF-8 and try again.");
  }

  @Test
  void aByteOrderMarkIsNoMatter() {
    byte[] bytes = "\uFEFFname: x\n".getBytes(StandardCharsets.UTF_8);

    assertThat(read(TextFile.decode(bytes, "a.yaml")).has("name")).isTrue();
  }

  @Test
  void aHugeFileIsRefusedUnread(@TempDir Path dir) throws IOException {
    Path file = dir.resolve("kiln.yaml");
    Files.write(file, new byte[TextFile.MAX_YAML_BYTES + 1]);

    Inputs.refused(
        () -> TextFile.yaml(file),
        "kiln.yaml: the file has 1048577 bytes; expected at most 1048576, so this is probably the"
            + " wrong file.");
  }

  @Test
  void aMissingFileAndADirectoryAreTold(@TempDir Path dir) {
    Path missing = dir.resolve("none.yaml");
    Inputs.refused(
        () -> TextFile.yaml(missing),
        missing + ": there is no such file; give the path of a file that exists.");
    Inputs.refused(
        () -> TextFile.yaml(dir), dir + ": this is not a file; give the path of a file.");
  }

  /** Whatever is typed, the door answers with a value or with one sentence. */
  @Test
  void noiseNeverEscapesTheDoor() {
    Random random = new Random(20260902);
    String letters = "abc:-[]{},\"'#&*!|>%@` \n\t01.\u00e9\u0000";
    for (int i = 0; i < 5000; i++) {
      StringBuilder text = new StringBuilder();
      for (int n = random.nextInt(40); n > 0; n--) {
        text.append(letters.charAt(random.nextInt(letters.length())));
      }
      try {
        ScheduleFile.read(text.toString(), "noise.yaml");
      } catch (InputException e) {
        assertThat(e.getMessage()).startsWith("noise.yaml").endsWith(".").doesNotContain("\n");
      }
    }
  }

  @Test
  void aSecondDocumentIsToldInPlainWords() {
    Inputs.refused(
        () ->
            ScheduleFile.read(
                "name: a\nunit: C\nsegments: [{rate: 1, target: 9}]\n---\nname: b\n", "s.yaml"),
        "s.yaml, line 4: a second document begins here; expected one document in a file: take out the line of three hyphens, or make two files.");
  }
}
