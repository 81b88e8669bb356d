package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.Forecaster;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Composer;
import org.heatwright.work.Composition;
import org.heatwright.work.Found;
import org.heatwright.work.Work;
import org.heatwright.work.WorkRefusedException;
import org.junit.jupiter.api.Test;

/** On a keypad in °F everything is told in °F, whatever unit the sources of the rules are in. */
class FahrenheitTest {

  private static final String DEMO = "src/main/resources/demo/";

  private static String text(String path) throws IOException {
    return Files.readString(Path.of(DEMO + path), StandardCharsets.UTF_8);
  }

  /** One of the demo's, its unit no longer to be changed. */
  private static Keypad keypad() throws IOException {
    String skua =
        text("keypads/skua.yaml")
            .replace("{setting: switchable, ranges-in: F", "{setting: F")
            .replace(", switching-converts: unknown", "")
            .replaceAll("(?m)^ *switch-unit:.*\\R", "");
    return KeypadFile.read(skua, "skua-f");
  }

  @Test
  void nothingThatIsToldIsInCelsius() throws IOException {
    Keypad keypad = keypad();
    Kiln kiln = KilnFile.read(text("kilns/anchor.yaml"), "anchor");
    List<Path> works;
    try (Stream<Path> files = Files.list(Path.of(DEMO + "works"))) {
      works = files.sorted().toList();
    }
    int composed = 0;
    List<String> kinds = new ArrayList<>();
    for (Path file : works) {
      Work work = WorkFile.read(Files.readString(file), file.getFileName().toString());
      Composition composition;
      try {
        composition = Composer.compose(work, kiln, Optional.of(keypad));
      } catch (WorkRefusedException refused) {
        assertThat(refused).message().doesNotContain("°C");
        continue;
      }
      composed++;
      assertThat(composition.schedule().unit()).isEqualTo(TemperatureUnit.FAHRENHEIT);
      List<String> told = new ArrayList<>();
      composition.cautions().forEach(c -> told.add(c.message()));
      composition
          .reasons()
          .forEach(r -> told.add(r.value() + " | " + r.rule() + " | " + r.range()));
      composition.moments().forEach(m -> told.add(m.what() + " | " + m.why()));
      Inspection inspection =
          Inspection.of(composition.schedule()).in(kiln).on(keypad).forWork(composition.demands());
      // One forecast of each kind: what happens in the piece.
      if (!kinds.contains(composition.kind())) {
        kinds.add(composition.kind());
        Forecast forecast =
            Forecaster.forecast(
                ForecastRequest.of(composition.schedule(), kiln, composition.charge())
                    .withDraws(2));
        composition
            .outcomes(composition.schedule(), forecast)
            .forEach(o -> told.add(o.what() + " | " + o.value() + " | " + o.meaning()));
        inspection = inspection.with(forecast);
      }
      Inspector.inspect(inspection).forEach(f -> told.add(f.message()));
      assertThat(told)
          .as(file.getFileName().toString())
          .noneMatch(t -> t.matches(".*(°C|\\d K\\b).*"));
    }
    assertThat(composed).isGreaterThan(works.size() / 2);
    assertThat(kinds).hasSize(5);
    assertThat(kinds).allMatch(kind -> !Found.after(kind).equals(Found.afterAny()));
  }
}
