package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Gesture;
import org.heatwright.keypad.Key;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.pocket.Pocket;
import org.heatwright.schedule.Ramp;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The compiled core in the browser says, letter for letter, what the core says here: after random
 * keys, for random read-backs, on every keypad of the studio.
 */
class PocketParityIT {

  private static final long SEED = 20261126;
  private static final int RUNS = 40;
  private static final int KEYS = 120;
  private static final int READBACKS = 40;

  private static final String BATCH =
      """
      const [runs, done] = arguments;
      import('/pocket-core.js').then((core) => done(runs.map(({ data, calls }) => {
        const pocket = core.openPocket(data);
        return calls.map(({ name, text }) => pocket[name](text));
      })), (error) => done(String(error)));
      """;

  @TempDir static Path folder;
  private static Store store;
  private static DemoBench walk;
  private static Browser browser;

  @BeforeAll
  static void open() {
    walk = DemoBench.open(folder, Clock.systemUTC());
    store = walk.store();
    browser = walk.browser();
    browser.driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(2));
    browser.driver.get(walk.bench().address() + "health");
  }

  @AfterAll
  static void close() {
    walk.close();
  }

  /** One call of the door, by name. */
  private record Call(String name, String text) {

    String made(Pocket pocket) {
      return switch (name) {
        case "press" -> pocket.press(text);
        case "peek" -> pocket.peek(text);
        case "back" -> pocket.back();
        case "questions" -> pocket.questions();
        default -> pocket.compare(text);
      };
    }
  }

  private record Run(String data, List<Call> calls) {}

  @Test
  void randomKeysLeadToTheSameDisplays() {
    Random random = new Random(SEED);
    List<Run> runs = new ArrayList<>();
    for (Keypad keypad : keypads()) {
      for (int run = 0; run < RUNS; run++) {
        List<Call> calls = new ArrayList<>();
        keypad.gestures().open().presses().forEach(press -> calls.add(press(pressed(press))));
        for (int i = 0; i < KEYS; i++) {
          int what = random.nextInt(20);
          calls.add(
              what == 0
                  ? new Call("back", "")
                  : what == 1
                      ? new Call("peek", action(keypad, random))
                      : press(action(keypad, random)));
        }
        runs.add(
            new Run(
                Pocket.data(keypad, program(keypad, random), slot(keypad), Optional.empty()),
                calls));
      }
    }
    List<List<String>> here = here(runs);
    assertThat(here.stream().flatMap(List::stream).distinct().count())
        .as("different answers, or the keys led nowhere")
        .isGreaterThan(1000);
    requireSame(here, inTheBrowser(runs));
  }

  @Test
  void randomReadBacksGetTheSameAnswers() {
    Random random = new Random(SEED + 1);
    List<Run> runs = new ArrayList<>();
    for (Keypad keypad : keypads()) {
      for (int run = 0; run < READBACKS; run++) {
        FittedProgram program = program(keypad, random);
        List<Call> calls = new ArrayList<>(List.of(new Call("questions", "")));
        for (int i = 0; i < 4; i++) {
          calls.add(new Call("compare", readback(program, keypad, random)));
        }
        runs.add(new Run(Pocket.data(keypad, program, slot(keypad), Optional.empty()), calls));
      }
    }
    List<List<String>> here = here(runs);
    for (String outcome : List.of("Keyed as planned", "Not yet")) {
      assertThat(here.toString()).contains(outcome);
    }
    requireSame(here, inTheBrowser(runs));
  }

  private static List<List<String>> here(List<Run> runs) {
    return runs.stream()
        .map(
            run -> {
              Pocket pocket = Pocket.openPocket(run.data());
              return run.calls().stream().map(call -> call.made(pocket)).toList();
            })
        .toList();
  }

  /** One by one, so that a difference is told alone. */
  private static void requireSame(List<List<String>> here, Object there) {
    assertThat(there).isInstanceOf(List.class).asList().hasSameSizeAs(here);
    for (int run = 0; run < here.size(); run++) {
      List<?> answers = (List<?>) ((List<?>) there).get(run);
      for (int i = 0; i < here.get(run).size(); i++) {
        assertThat(answers.get(i)).as("run %d, call %d", run, i).isEqualTo(here.get(run).get(i));
      }
    }
  }

  private static Object inTheBrowser(List<Run> runs) {
    return browser.chrome.executeAsyncScript(
        BATCH,
        runs.stream()
            .map(
                run ->
                    java.util.Map.of(
                        "data",
                        run.data(),
                        "calls",
                        run.calls().stream()
                            .map(c -> java.util.Map.of("name", c.name(), "text", c.text()))
                            .toList()))
            .toList());
  }

  private static List<Keypad> keypads() {
    List<Document> documents = store.all(Kind.KEYPAD);
    assertThat(documents).hasSizeGreaterThanOrEqualTo(5);
    return documents.stream().map(d -> KeypadFile.read(d.text(), d.name())).toList();
  }

  private static int slot(Keypad keypad) {
    return Math.min(2, keypad.slots());
  }

  /** A schedule that fits, of one to four segments, in either unit. */
  private static FittedProgram program(Keypad keypad, Random random) {
    while (true) {
      TemperatureUnit unit = TemperatureUnit.values()[random.nextInt(2)];
      List<Segment> segments = new ArrayList<>();
      for (int i = 1 + random.nextInt(4); i > 0; i--) {
        segments.add(
            new Segment(
                random.nextInt(5) == 0
                    ? Ramp.fastest()
                    : Ramp.at(unit.rate(60 + random.nextInt(200) + random.nextInt(10) / 10.0)),
                unit.temperature(200 + random.nextInt(700)),
                Duration.ofMinutes(random.nextInt(240))));
      }
      FittedProgram program = KeypadFit.fit(Schedule.of("random", unit, segments), keypad);
      if (program.fits()) {
        return program;
      }
    }
  }

  // ---------------------------------------------------------------- keys

  private static Call press(String action) {
    return new Call("press", action);
  }

  private static String action(Keypad keypad, Random random) {
    List<Key> keys = keypad.keys().stream().sorted().toList();
    Key key = random.nextInt(3) == 0 ? keypad.accept() : keys.get(random.nextInt(keys.size()));
    return switch (key) {
      case DIGITS -> "{\"kind\":\"digit\",\"digit\":%d}".formatted(random.nextInt(10));
      case TURN ->
          "{\"kind\":\"turn\",\"clicks\":%d,\"spun\":%b}"
              .formatted(random.nextInt(41) - 20, random.nextBoolean());
      default ->
          random.nextInt(3) > 0
              ? "{\"kind\":\"tap\",\"key\":\"%s\"}".formatted(key)
              : held(key, (1 + random.nextInt(700)) / 100.0);
    };
  }

  private static String held(Key key, double seconds) {
    return String.format(
        Locale.ROOT, "{\"kind\":\"hold\",\"key\":\"%s\",\"seconds\":%s}", key, seconds);
  }

  private static String pressed(Gesture.Press press) {
    return press.holdSeconds() > 0
        ? held(press.key(), press.holdSeconds())
        : "{\"kind\":\"tap\",\"key\":\"%s\"}".formatted(press.key());
  }

  // ---------------------------------------------------------------- read-backs

  /** What the display would show, some of it changed, dropped, moved or written in another way. */
  private static String readback(FittedProgram program, Keypad keypad, Random random) {
    List<String> texts = new ArrayList<>();
    for (var question : org.heatwright.keypad.Readback.questions(program, keypad)) {
      texts.add(
          program.values().stream()
              .filter(
                  v ->
                      question.words().equals(v.place())
                          || (v.kind() == KeyedValue.Kind.END
                              && question.words().startsWith("segment " + v.segment() + ",")))
              .findFirst()
              .map(KeyedValue::digits)
              .orElse("0"));
    }
    for (int slips = random.nextInt(3); slips > 0 && !texts.isEmpty(); slips--) {
      int at = random.nextInt(texts.size());
      switch (random.nextInt(6)) {
        case 0 -> texts.set(at, Integer.toString(random.nextInt(1000)));
        case 1 -> texts.set(at, "");
        case 2 -> texts.set(at, " " + texts.get(at).replace('.', ',') + "\u00a0");
        case 3 -> texts.set(at, texts.get(at) + random.nextInt(10));
        case 4 -> texts.add(at, texts.get(at));
        default -> java.util.Collections.swap(texts, at, random.nextInt(texts.size()));
      }
    }
    StringBuilder values = new StringBuilder();
    for (String text : texts) {
      values.append(values.isEmpty() ? "" : ",").append('"').append(text).append('"');
    }
    return """
        {"slot":"%s","sign":"%s","values":[%s],"overnight":true,"display":"%s","thermometer":"%s",\
        "thermometerUnit":"C"}"""
        .formatted(
            random.nextInt(4) == 0 ? "" : slot(keypad),
            random.nextBoolean() ? program.unit().letter() : "",
            values,
            random.nextBoolean() ? "" : random.nextInt(90),
            random.nextBoolean() ? "19" : "19,5");
  }
}
