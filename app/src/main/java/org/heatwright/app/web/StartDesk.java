package org.heatwright.app.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.files.YamlText;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ClockWords;
import org.heatwright.schedule.HourMinute;

/**
 * A first run: four short steps from nothing to a plan. Every answer is kept as it is given, so
 * that a shut browser loses nothing; only the last step puts kiln, keypad and work on the shelf.
 */
final class StartDesk {

  /** A keypad that stands in until somebody has described the real one; see {@link Page.Keying}. */
  static final String NOT_DESCRIBED = "Keypad not described yet";

  private static final Pattern NUMBER =
      Pattern.compile("(\\d{1,7}(?:[.,]\\d{1,3})?)\\s*([A-Za-z°]*)");
  private static final double INCH_CENTIMETRES = 2.54;

  private final Store store;
  private final Clock clock;

  StartDesk(Store store, Clock clock) {
    this.store = store;
    this.clock = clock;
  }

  /** The steps, in their order. */
  enum Step {
    WHAT("What"),
    KILN("Kiln"),
    KEYPAD("Keypad"),
    WORK("First work");

    private final String words;

    Step(String words) {
      this.words = words;
    }

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    String address() {
      return "/start?step=" + word();
    }
  }

  /** A described kind of keypad that is offered by what it looks like. */
  private record Offered(String file, String name, String words, String about) {}

  private static final List<Offered> OFFERED =
      List.of(
          new Offered(
              "tern",
              "Up-and-down keys",
              "Up and down keys, and one for next",
              "a value is stepped, faster the longer a key is kept down"),
          new Offered(
              "gull",
              "Digit keys",
              "Digits 0 to 9, like a calculator",
              "it asks for the number of segments first"),
          new Offered("heron", "Knob", "One knob that is turned and pushed", "and a key for back"),
          new Offered(
              "petrel",
              "List of values",
              "A list that up and down walk along",
              "a key opens a value and closes it again"));

  /** Whether there is nothing to plan with yet. */
  boolean isEmpty() {
    return store.all(Kind.KILN).isEmpty() || store.all(Kind.WORK).isEmpty();
  }

  /** The first step that is not answered yet. */
  Step next() {
    Map<String, String> answers = store.start().answers();
    for (Step step : Step.values()) {
      if (!errors(step, answers).isEmpty()) {
        return step;
      }
    }
    return Step.WORK;
  }

  /** Whether every step is answered. */
  boolean isDone() {
    Map<String, String> answers = store.start().answers();
    for (Step step : Step.values()) {
      if (!errors(step, answers).isEmpty()) {
        return false;
      }
    }
    return true;
  }

  static Optional<Step> step(String word) {
    for (Step step : Step.values()) {
      if (step.word().equals(word)) {
        return Optional.of(step);
      }
    }
    return Optional.empty();
  }

  /** Keeps what was typed, as it was typed. */
  void keep(Step step, Map<String, String> form) {
    Map<String, String> known = new LinkedHashMap<>();
    for (StartQuestions.Asked asked : asked(step, form.getOrDefault("kind", kind()))) {
      if (form.containsKey(asked.name())) {
        known.put(asked.name(), form.get(asked.name()).strip());
      }
    }
    String zone = form.getOrDefault("zone", "");
    if (!zone.isBlank()) {
      known.put("zone", zone);
    }
    store.start().keep(known);
  }

  void clear() {
    store.start().clear();
  }

  private String kind() {
    return store.start().answers().getOrDefault("what", "");
  }

  private List<StartQuestions.Asked> asked(Step step, String kind) {
    return switch (step) {
      case WHAT -> List.of(StartQuestions.WHAT);
      case KILN -> StartQuestions.KILN;
      case KEYPAD -> List.of(keypads());
      case WORK -> kind.isEmpty() ? List.of() : StartQuestions.work(kind);
    };
  }

  private StartQuestions.Asked keypads() {
    List<StartPage.Option> options = new ArrayList<>();
    for (Document keypad : store.all(Kind.KEYPAD)) {
      options.add(
          new StartPage.Option("shelf:" + keypad.name(), keypad.name(), "it is on your shelf"));
    }
    OFFERED.forEach(o -> options.add(new StartPage.Option(o.file(), o.words(), o.about())));
    options.add(
        new StartPage.Option(
            "ask",
            "Mine is otherwise",
            "afterwards some fifty short questions describe it; that takes a quarter of an hour"));
    options.add(
        new StartPage.Option(
            "later", "Not now", "plan without it: values to key, but no keys to press"));
    return new StartQuestions.Asked(
        "pad", "", "What does the controller look like?", "", "pick", "", options, "");
  }

  // ---- a page

  /**
   * @param step which
   * @param told whether what is wrong is to be told: not before somebody has answered
   */
  StartPage page(Step step, boolean told, String error, String demo) {
    Map<String, String> answers = store.start().answers();
    Map<String, String> errors = told ? errors(step, answers) : Map.of();
    String kind = answers.getOrDefault("what", "");
    List<StartPage.Step> steps = new ArrayList<>();
    boolean open = true;
    for (Step other : Step.values()) {
      steps.add(new StartPage.Step(other.words, open ? other.address() : "", other == step));
      open = open && errors(other, answers).isEmpty();
    }
    return new StartPage(
        ClockWords.stamp(clock.instant().atZone(clock.getZone())),
        steps,
        step.word(),
        switch (step) {
          case WHAT -> "What do you fire?";
          case KILN -> "Which kiln?";
          case KEYPAD -> "What is it keyed in on?";
          case WORK -> "The first work";
        },
        switch (step) {
          case WHAT ->
              "Four short steps lead to a first plan and its card. Each answer is kept as you give it.";
          case KILN ->
              "From its plate and with a ruler. What nobody knows yet is taken as stated below; a log of one firing narrows it.";
          case KEYPAD ->
              "Keys to press are only as good as the description of the controller: rehearse them before the first firing.";
          case WORK ->
              "What stands here is usual. Change what is otherwise with yours; everything can be changed later.";
        },
        asked(step, kind).stream().map(a -> a.field(answers, errors)).toList(),
        step == Step.KILN ? guesses() : List.of(),
        error,
        step == Step.WORK ? "Make the first plan" : "Next",
        step == Step.WHAT ? "" : Step.values()[step.ordinal() - 1].address(),
        !answers.isEmpty(),
        demo);
  }

  private static List<Page.Fact> guesses() {
    return List.of(
        new Page.Fact(
            "Brick",
            "64 mm of insulating firebrick and 25 mm of fibre blanket behind it. Estimate: common in small kilns, no source."),
        new Page.Fact(
            "Fibre",
            "50 mm of formed fibre and 25 mm of fibre blanket behind it. Estimate: common in small kilns, no source."),
        new Page.Fact(
            "Not known",
            "Taken as brick. That is the slower of the two; the forecast's band is wide either way."),
        new Page.Fact(
            "Thermocouple",
            "Type K in a sheath, showing what it feels. Estimate: most small kilns have it; a melt test of silver wire shows its error."),
        new Page.Fact(
            "Controller",
            "Holds its heat by short pulses, waits for no hold, and after a power cut does what its keypad's description says. Estimate."));
  }

  // ---- checking

  /** Field to what is wrong with it; empty if the step is answered. */
  private Map<String, String> errors(Step step, Map<String, String> answers) {
    Map<String, String> errors = new LinkedHashMap<>();
    switch (step) {
      case WHAT -> {
        if (StartQuestions.WHAT.options().stream()
            .noneMatch(o -> o.value().equals(answers.getOrDefault("what", "")))) {
          errors.put("what", "Choose one; the others can follow at any time.");
        }
      }
      case KEYPAD -> {
        if (keypads().options().stream()
            .noneMatch(o -> o.value().equals(answers.getOrDefault("pad", "")))) {
          errors.put("pad", "Choose one; “Not now” is an answer too.");
        }
      }
      case KILN -> kilnErrors(answers, errors);
      case WORK -> workErrors(answers, errors);
    }
    return errors;
  }

  private static void kilnErrors(Map<String, String> answers, Map<String, String> errors) {
    name(answers, "kiln-name", "My kiln", errors);
    if (volts(answers).isEmpty()) {
      errors.put("kiln-volts", "Volts are a number from 20 to 1000, such as 230.");
    }
    if (watts(answers).isEmpty()) {
      errors.put("kiln-power", "Power is a number of watts from 50 to 100000, or 2.6 kW, or 11 A.");
    }
    for (String side : List.of("kiln-width", "kiln-depth", "kiln-height")) {
      boolean round = side.equals("kiln-depth") && text(answers, side).isEmpty();
      if (!round && millimetres(text(answers, side)).isEmpty()) {
        errors.put(side, "Measure inside, 3 to 400 cm, such as 22.");
      }
    }
    if (celsius(text(answers, "kiln-top")).isEmpty()) {
      errors.put("kiln-top", "The plate or the manual says it: 300 to 1400 °C, such as 1100.");
    }
    if (errors.isEmpty()) {
      try {
        KilnFile.read(kilnFile(answers, "My kiln", ZoneId.of("UTC")), "kiln");
      } catch (InputException e) {
        errors.put("kiln-name", sentence(e));
      }
    }
  }

  private static void workErrors(Map<String, String> answers, Map<String, String> errors) {
    String kind = text(answers, "what");
    if (kind.isEmpty() || !answers.containsKey("work-name")) {
      errors.put("work-name", "Give it a name to find it by.");
      return;
    }
    name(answers, "work-name", "", errors);
    Map<String, String> checked = checked(kind, answers, errors);
    if (errors.isEmpty()) {
      try {
        WorkFile.read(StartQuestions.file(kind, checked), "work");
      } catch (InputException e) {
        String sentence = sentence(e);
        String field =
            StartQuestions.work(kind).stream()
                .filter(a -> !a.key().isEmpty() && sentence.contains(a.key()))
                .map(StartQuestions.Asked::name)
                .findFirst()
                .orElse("work-name");
        errors.put(field, sentence);
      }
    }
  }

  /** Numbers as files have them; what is none is told. */
  private static Map<String, String> checked(
      String kind, Map<String, String> answers, Map<String, String> errors) {
    Map<String, String> checked = new LinkedHashMap<>();
    for (StartQuestions.Asked asked : StartQuestions.work(kind)) {
      String typed = answers.getOrDefault(asked.name(), asked.usual()).strip();
      if (asked.kind().equals("decimal")) {
        Matcher number = NUMBER.matcher(typed);
        if (number.matches()
            && (number.group(2).isEmpty() || number.group(2).equalsIgnoreCase(asked.unit()))) {
          checked.put(asked.name(), number.group(1).replace(',', '.'));
        } else {
          errors.put(
              asked.name(), "“%s” is no number; write it like %s.".formatted(typed, asked.usual()));
        }
      } else if (asked.kind().equals("choice")) {
        if (asked.options().stream().noneMatch(o -> o.value().equals(typed))) {
          errors.put(asked.name(), "Choose one of the list.");
        }
        checked.put(asked.name(), typed);
      } else if (asked.name().equals("work-session")) {
        Optional<Duration> session = SegmentFields.parseHold(typed);
        session.ifPresent(s -> checked.put(asked.name(), HourMinute.format(s)));
        if (session.isEmpty()) {
          errors.put(asked.name(), "Hours and minutes, such as 2:00, 1h30 or 90 min.");
        }
      }
    }
    return checked;
  }

  private static void name(
      Map<String, String> answers, String field, String usual, Map<String, String> errors) {
    String name = answers.getOrDefault(field, usual).strip();
    if (name.isEmpty() || name.length() > 80) {
      errors.put(field, "Give it a name of up to 80 letters to find it by.");
    }
  }

  /** Without the file's name and line: here there is none. */
  private static String sentence(InputException e) {
    return Objects.requireNonNull(e.getMessage()).replaceFirst("^[^:]*: ", "");
  }

  private static String text(Map<String, String> answers, String field) {
    return answers.getOrDefault(field, "").strip();
  }

  private static OptionalDouble volts(Map<String, String> answers) {
    return measured(text(answers, "kiln-volts"), Map.of("", 1.0, "v", 1.0), 20, 1000);
  }

  /** Watts, or amperes at the plate's volts. */
  private static OptionalDouble watts(Map<String, String> answers) {
    String typed = text(answers, "kiln-power");
    double volts = volts(answers).orElse(Double.NaN);
    return measured(typed, Map.of("", 1.0, "w", 1.0, "kw", 1000.0, "a", volts), 50, 100_000);
  }

  private static OptionalDouble millimetres(String typed) {
    return measured(
        typed,
        Map.of("", 10.0, "cm", 10.0, "mm", 1.0, "in", 10 * INCH_CENTIMETRES, "inch", 254.0 / 10),
        30,
        4000);
  }

  private static OptionalDouble celsius(String typed) {
    Matcher number = NUMBER.matcher(typed);
    if (number.matches() && number.group(2).replace("°", "").equalsIgnoreCase("f")) {
      double fahrenheit = Double.parseDouble(number.group(1).replace(',', '.'));
      return within((fahrenheit - 32) / 1.8, 300, 1400);
    }
    return measured(typed, Map.of("", 1.0, "c", 1.0), 300, 1400);
  }

  private static OptionalDouble measured(
      String typed, Map<String, Double> units, double low, double high) {
    Matcher number = NUMBER.matcher(typed);
    if (!number.matches()) {
      return OptionalDouble.empty();
    }
    Double factor = units.get(number.group(2).replace("°", "").toLowerCase(Locale.ROOT));
    return factor == null
        ? OptionalDouble.empty()
        : within(factor * Double.parseDouble(number.group(1).replace(',', '.')), low, high);
  }

  private static OptionalDouble within(double value, double low, double high) {
    return value >= low && value <= high ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  // ---- the shelf

  /** The kiln's file, by its plate and by what is usual; see {@link #guesses}. */
  private static String kilnFile(Map<String, String> answers, String name, ZoneId zone) {
    StringBuilder out = new StringBuilder();
    out.append("name: ").append(YamlText.text(name)).append('\n');
    String height = number(millimetres(text(answers, "kiln-height")));
    String width = number(millimetres(text(answers, "kiln-width")));
    OptionalDouble depth = millimetres(text(answers, "kiln-depth"));
    Map<String, String> chamber = new LinkedHashMap<>();
    if (depth.isPresent()) {
      chamber.put("width-mm", width);
      chamber.put("depth-mm", number(depth));
    } else {
      chamber.put("diameter-mm", width);
    }
    chamber.put("height-mm", height);
    out.append("chamber: ").append(YamlText.flow(chamber)).append('\n');
    out.append(
        "element: {rated-w: %s, rated-v: %s}\n"
            .formatted(number(watts(answers)), number(volts(answers))));
    out.append("walls:\n");
    if (answers.getOrDefault("kiln-wall", "brick").equals("fibre")) {
      out.append("  - {material: vacuum-formed-fibre-220, thickness-mm: 50}\n")
          .append("  - {material: fibre-blanket-128, thickness-mm: 25}\n");
    } else {
      out.append("  - {material: insulating-brick-23, thickness-mm: 64}\n")
          .append("  - {material: fibre-blanket-96, thickness-mm: 25}\n");
    }
    out.append("door: ").append(answers.getOrDefault("kiln-door", "front")).append('\n');
    out.append("max-celsius: ")
        .append(number(celsius(text(answers, "kiln-top"))))
        .append("\ntime-zone: ")
        .append(YamlText.text(zone.getId()))
        .append('\n');
    return out.toString();
  }

  private static String number(OptionalDouble value) {
    return YamlText.number(Math.rint(10 * value.orElseThrow()) / 10);
  }

  /**
   * Puts everything on the shelf, under names that nothing there has, and forgets the answers.
   *
   * @return where to go on
   */
  String finish() {
    Map<String, String> answers = store.start().answers();
    String kind = text(answers, "what");
    String kilnName =
        store.away().free(Kind.KILN, answers.getOrDefault("kiln-name", "My kiln").strip());
    String kiln =
        KilnFile.write(KilnFile.readContent(kilnFile(answers, kilnName, zone(answers)), kilnName));
    String workName = store.away().free(Kind.WORK, text(answers, "work-name"));
    String work =
        WorkFile.write(
            WorkFile.read(
                StartQuestions.file(kind, checked(kind, answers, new LinkedHashMap<>())),
                workName));
    store.keep(Kind.KILN, kilnName, kiln);
    store.keep(Kind.WORK, workName, work);
    String pad = text(answers, "pad");
    String keypad = keypad(pad);
    store.start().clear();
    return pad.equals("ask")
        ? "/keypad/new"
        : "/plan?"
            + Choices.of(Map.of()).withWork(workName).withKiln(kilnName).withKeypad(keypad).query();
  }

  private String keypad(String pad) {
    if (pad.startsWith("shelf:")) {
      return pad.substring("shelf:".length());
    }
    Optional<Offered> offered = OFFERED.stream().filter(o -> o.file().equals(pad)).findFirst();
    if (offered.isEmpty()) {
      String text = text("/start/keypad.yaml");
      store.keep(Kind.KEYPAD, KeypadFile.read(text, NOT_DESCRIBED).name(), text);
      return NOT_DESCRIBED;
    }
    String name = store.away().free(Kind.KEYPAD, offered.get().name());
    String text =
        text("/demo/keypads/" + offered.get().file() + ".yaml")
            .replaceFirst("(?m)^name: .*$", "name: " + YamlText.text(name));
    store.keep(Kind.KEYPAD, KeypadFile.read(text, name).name(), text);
    return name;
  }

  /** Where the browser says it is; else the bench's own. */
  private ZoneId zone(Map<String, String> answers) {
    try {
      return ZoneId.of(answers.getOrDefault("zone", ""));
    } catch (DateTimeException notTold) {
      return clock.getZone();
    }
  }

  private static String text(String resource) {
    try (InputStream in = StartDesk.class.getResourceAsStream(resource)) {
      return new String(
          Objects.requireNonNull(in, resource).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
