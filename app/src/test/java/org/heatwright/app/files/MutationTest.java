package org.heatwright.app.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever a person puts in place of a value, the reader gives a value or one clear sentence. */
class MutationTest {

  private static final List<String> STRANGE =
      List.of(
          "",
          "~",
          "0",
          "-1",
          "1e308",
          "1e-300",
          ".nan",
          ".inf",
          "true",
          "no",
          "\"\"",
          "\"x\"",
          "x",
          "[]",
          "{}",
          "[1, 2]",
          "{a: 1}",
          "2026-02-30",
          "25:00",
          "24:00",
          "\"99999:59\"",
          "999999",
          "0.000001",
          "fastest",
          "'",
          "\t",
          "&a 1",
          "*a",
          "!!int 3",
          "|",
          "é",
          "\"\\u0000\"");

  private static final Pattern VALUE = Pattern.compile("(?<=: )([^,{}\\[\\]\\n]+)");

  static Stream<Arguments> files() {
    BiFunction<String, String, ?> kiln = KilnFile::read;
    BiFunction<String, String, ?> work = WorkFile::read;
    BiFunction<String, String, ?> firing = FiringFile::read;
    BiFunction<String, String, ?> shown = ShownFile::read;
    BiFunction<String, String, ?> body = BodyFile::read;
    BiFunction<String, String, ?> values = ValuesFile::read;
    return Stream.of(
        Arguments.of("kiln", kiln, KilnFileTest.FULL),
        Arguments.of("burnout", work, WorkFileTest.BURNOUT),
        Arguments.of("enamel", work, WorkFileTest.ENAMEL),
        Arguments.of("enamel, all known", work, WorkFileTest.ENAMEL_FULL),
        Arguments.of("heat-treat", work, HeatTreatWorkFileTest.FULL),
        Arguments.of("firing", firing, FiringFileTest.FULL),
        Arguments.of("shown", shown, ShownFileTest.FULL),
        Arguments.of("body", body, BodyFileTest.FULL),
        Arguments.of("own values", values, ValuesFileTest.ENAMEL));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("files")
  void aStrangeValueIsReadOrTold(String name, BiFunction<String, String, ?> read, String good) {
    List<int[]> places =
        VALUE.matcher(good).results().map(m -> new int[] {m.start(), m.end()}).toList();
    int refused = 0;
    for (int[] place : places) {
      for (String strange : STRANGE) {
        refused += tried(read, splice(good, place, strange));
      }
    }
    assertThat(refused).isGreaterThan(places.size() * STRANGE.size() / 2);
    Random random = new Random(name.hashCode());
    for (int i = 0; i < 1000; i++) {
      String text = good;
      for (int n = 1 + random.nextInt(3); n > 0; n--) {
        Matcher matcher = VALUE.matcher(text);
        List<int[]> left = matcher.results().map(m -> new int[] {m.start(), m.end()}).toList();
        text =
            splice(
                text,
                left.get(random.nextInt(left.size())),
                STRANGE.get(random.nextInt(STRANGE.size())));
        if (!VALUE.matcher(text).find()) {
          break;
        }
      }
      tried(read, text);
    }
  }

  private static String splice(String text, int[] place, String strange) {
    return text.substring(0, place[0]) + strange + text.substring(place[1]);
  }

  /** 1 if refused in one sentence, 0 if read; any other exception fails the test. */
  private static int tried(BiFunction<String, String, ?> read, String text) {
    try {
      assertThat(read.apply(text, "f.yaml")).isNotNull();
      return 0;
    } catch (InputException e) {
      assertThat(e.getMessage()).startsWith("f.yaml").endsWith(".").doesNotContain("\n");
      assertThat(e.getMessage().length()).isLessThan(700);
      return 1;
    }
  }
}
