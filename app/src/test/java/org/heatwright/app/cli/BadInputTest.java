package org.heatwright.app.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is wrong, people get one sentence and an exit code, never a stack trace. */
class BadInputTest {

  @TempDir private Path dir;

  private static void refused(Run run, int code, String message) {
    assertThat(run.err()).isEqualTo(message + System.lineSeparator());
    assertThat(run.code()).isEqualTo(code);
    assertThat(run.out()).isEmpty();
  }

  private Path file(String name, String text) throws IOException {
    return Files.writeString(dir.resolve(name), text);
  }

  private static void usage(Run run, String message) {
    assertThat(run.err().lines().findFirst()).contains(message);
    assertThat(run.err().lines().count()).isEqualTo(2);
    assertThat(run.err()).contains("Try heatwright ").contains(" --help.");
    assertThat(run.code()).isEqualTo(2);
  }

  @Test
  void wrongArgumentsAreTold() {
    usage(Run.of("compose", "w.yaml"), "Missing required option: '--kiln=K'.");
    usage(
        Run.of("forecast", "s.yaml", "--kiln", "k.yaml", "--ready-bye", "10:00"),
        "Not expected here: --ready-bye, 10:00 (did you mean --ready-by?).");
    usage(Run.of("forcast"), "Not expected here: forcast (did you mean forecast?).");
    usage(
        Run.of("keying", "s.yaml", "--keypad", "p.yaml", "--slot", "two"),
        "Invalid value for option '--slot': 'two' is not a whole number.");
  }

  @Test
  void whatCannotBeSentIsTold() throws IOException {
    Path page = dir.resolve("page.html");
    Path gull = Studio.keypad("gull");
    Path schedule = Studio.schedule("working-heat");
    refused(
        Run.of("send", schedule, "--keypad", gull, "--slot", 99, "-o", page),
        2,
        "--slot: 99 is not a slot of Gull; expected 1 to 9.");
    refused(
        Run.of("send", schedule, "--keypad", gull, "-o", schedule),
        2,
        "--output: %s is the file that S reads, which would be lost; choose another name to write to."
            .formatted(schedule));
    refused(
        Run.of("send", schedule, "--keypad", gull, "-o", Studio.keypad("heron")),
        2,
        Studio.keypad("heron")
            + ": the file is there already and is not a page of ours; choose another name or move it away.");
    usage(
        Run.of("send", schedule, "--keypad", gull, "--start", "10:00"),
        "Missing required argument(s): --kiln=K.");
    Run.of("send", schedule, "--keypad", gull, "-o", page);
    assertThat(Run.of("send", schedule, "--keypad", gull, "-o", page).code()).isZero();
  }

  @Test
  void aMissingFileIsTold() {
    Path none = dir.resolve("none.yaml");
    refused(
        Run.of("inspect", none),
        2,
        none + ": there is no such file; give the path of a file that exists.");
  }

  @Test
  void aSlipInAFileNamesFileLineFieldFoundAndExpected() throws IOException {
    String kiln = Files.readString(Studio.kiln("anchor")).replace("kind: pid", "kind: pdi");
    refused(
        Run.of("forecast", Studio.schedule("working-heat"), "--kiln", file("kiln.yaml", kiln)),
        2,
        "kiln.yaml, line 11: control.kind is \"pdi\"; expected pid or on-off (did you mean pid?).");
  }

  @Test
  void aKilnFileInPlaceOfAScheduleIsTold() {
    refused(
        Run.of("inspect", Studio.kiln("anchor")),
        2,
        "anchor.yaml: this looks like a kiln file; a schedule file is expected.");
  }

  @Test
  void aScanWithoutACodeIsTold() throws IOException {
    refused(Run.of("scan"), 2, "scan: give either a FILE or --text with the code's text.");
    Path none = dir.resolve("none.png");
    refused(
        Run.of("scan", none),
        2,
        none + ": there is no such file; give the path of a file that exists.");
    refused(
        Run.of("scan", file("card.pdf", "name: x\n")),
        2,
        "card.pdf: this is neither a PNG or JPEG picture nor a PDF; expected one of these.");
    refused(
        Run.of("scan", "--text", "https://example.org"),
        2,
        "--text: this is not a schedule's code; expected a text that begins with"
            + " \"HEATWRIGHT:1:\".");
  }

  @Test
  void binaryIsTold() throws IOException {
    Path file = dir.resolve("s.yaml");
    Files.write(file, new byte[] {(byte) 0xff, (byte) 0xd8, 0x01});
    refused(
        Run.of("inspect", file),
        2,
        "s.yaml, line 1: the text is not UTF-8; save the file as UTF-8 and try again.");
  }

  @Test
  void readyByNeedsTheKilnsTimeZone() throws IOException {
    String kiln = Files.readString(Studio.kiln("anchor")).replace("time-zone: Europe/Lisbon\n", "");
    Path path = file("kiln.yaml", kiln);
    refused(
        Run.of("forecast", Studio.schedule("working-heat"), "--kiln", path, "--ready-by", "10:00"),
        2,
        "kiln.yaml: time-zone is missing, and --ready-by 10:00 needs it; expected a line such as"
            + " time-zone: Europe/Lisbon.");
  }

  @Test
  void aTimeThatIsNoneIsTold() {
    refused(
        Run.of(
            "forecast",
            Studio.schedule("working-heat"),
            "--kiln",
            Studio.kiln("buoy"),
            "--start",
            "tomorrow"),
        2,
        "--start: \"tomorrow\" is not a time; expected 2026-12-03T10:00, 10:00 for the next one, or"
            + " now.");
    refused(
        Run.of(
            "forecast",
            Studio.schedule("working-heat"),
            "--kiln",
            Studio.kiln("buoy"),
            "--start",
            "now",
            "--ready-by",
            "10:00"),
        2,
        "--ready-by: --start is given too; keep one of the two.");
  }

  @Test
  void workThatIsNotServedIsRefusedInOneSentence() throws IOException {
    String work =
        Files.readString(Studio.work("harbour-burnout"))
            .replace("binder: gypsum", "binder: unknown");
    Run run = Run.of("compose", file("work.yaml", work), "--kiln", Studio.kiln("capstan"));

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines().count()).isEqualTo(1);
    assertThat(run.err()).contains("binder", "gypsum or phosphate");
  }

  @Test
  void aForeignFileIsNeverOverwritten() throws IOException {
    Path precious = file("precious.yaml", "diary: do not lose\n");
    refused(
        Run.of(
            "compose",
            Studio.work("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "-o",
            precious),
        2,
        precious
            + ": the file is there already and is not a schedule; choose another name or move it"
            + " away.");
    assertThat(precious).hasContent("diary: do not lose");
    refused(
        Run.of(
            "forecast",
            Studio.schedule("working-heat"),
            "--kiln",
            Studio.kiln("buoy"),
            "--trace",
            precious),
        2,
        precious
            + ": the file is there already and is not a trace; choose another name or move it"
            + " away.");
    Path nowhere = dir.resolve("no").resolve("s.yaml");
    refused(
        Run.of(
            "compose",
            Studio.work("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "-o",
            nowhere),
        2,
        nowhere + ": there is no such folder; make it first or choose another name.");
  }

  @Test
  void aScheduleThatIsReplacedIsKeptBesideIt() throws IOException {
    Path mine = file("mine.yaml", Files.readString(Studio.schedule("harbour-burnout")));
    Run run =
        Run.of(
            "compose",
            Studio.work("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "-o",
            mine);

    assertThat(run.code()).isZero();
    assertThat(dir.resolve("mine.yaml~"))
        .hasSameTextualContentAs(Studio.schedule("harbour-burnout"));
    assertThat(Files.readString(mine)).contains("burnout");
    try (var files = Files.list(dir)) {
      assertThat(files).hasSize(2);
    }
  }

  @Test
  void earlierSchedulesAreKeptHoweverOftenOneIsReplaced() throws IOException {
    Path mine = file("mine.yaml", Files.readString(Studio.schedule("working-heat")));
    Path kept = file("mine.yaml~", "diary: do not lose\n");
    Run run =
        Run.of(
            "compose",
            Studio.work("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "-o",
            mine);

    assertThat(run.out()).contains("mine.yaml~2");
    assertThat(kept).hasContent("diary: do not lose");
    assertThat(dir.resolve("mine.yaml~2")).hasSameTextualContentAs(Studio.schedule("working-heat"));
  }

  /** A file made in the plain way takes the usual permissions; so must ours. */
  @Test
  void writtenFilesHaveTheUsualPermissions() throws IOException {
    Path plain = file("plain.txt", "x");
    Path made = dir.resolve("made.yaml");
    Run.of("compose", Studio.work("harbour-burnout"), "--kiln", Studio.kiln("capstan"), "-o", made);

    assertThat(Files.getAttribute(made, "posix:permissions"))
        .isEqualTo(Files.getAttribute(plain, "posix:permissions"));
  }

  @Test
  void throughALinkTheFileItLeadsToIsReplaced() throws IOException {
    Path mine = file("mine.yaml", Files.readString(Studio.schedule("working-heat")));
    Path link = Files.createSymbolicLink(dir.resolve("link.yaml"), mine.getFileName());
    Run.of("compose", Studio.work("harbour-burnout"), "--kiln", Studio.kiln("capstan"), "-o", link);

    assertThat(link).isSymbolicLink();
    assertThat(Files.readString(mine)).contains("burnout");
  }

  @Test
  void aDeviceIsNeverReplaced() {
    refused(
        Run.of(
            "compose",
            Studio.work("harbour-burnout"),
            "--kiln",
            Studio.kiln("capstan"),
            "-o",
            "/dev/null"),
        2,
        "/dev/null: this is a device or a pipe, not a file; expected the name of a file to write.");
  }

  @Test
  void controlCharactersInANameAreTold() throws IOException {
    String schedule =
        Files.readString(Studio.schedule("working-heat"))
            .replaceFirst("name: .*", "name: \"a\\\\e[31mb\"");
    Run run = Run.of("inspect", file("s.yaml", schedule));

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err())
        .startsWith("s.yaml, line 2: name is ")
        .contains("expected text on one line, without control characters.")
        .doesNotContain("\u001b");
  }

  @Test
  void aReadyByThatHasPassedIsTold() {
    refused(
        Run.of(
            "forecast",
            Studio.schedule("working-heat"),
            "--kiln",
            Studio.kiln("buoy"),
            "--ready-by",
            "2020-01-01T10:00"),
        2,
        "--ready-by: 2020-01-01T10:00 has passed; expected a time to come.");
  }

  @Test
  void anAnswerThatCannotBeWrittenIsAFailure() {
    var err = new java.io.ByteArrayOutputStream();
    var utf8 = java.nio.charset.StandardCharsets.UTF_8;
    Surroundings surroundings =
        new Surroundings(
            new java.io.PrintStream(
                new java.io.OutputStream() {
                  @Override
                  public void write(int octet) throws IOException {
                    throw new IOException("no space left");
                  }
                },
                true,
                utf8),
            new java.io.PrintStream(err, true, utf8),
            java.time.Clock.systemUTC(),
            java.util.Map.of(),
            dir,
            () -> {});

    assertThat(Cli.run(surroundings, "couple", "--type", "K", "--celsius", "800")).isEqualTo(3);
    assertThat(err.toString(utf8)).startsWith("The answer could not be written in full");
  }

  @Test
  void aSlotTheKeypadDoesNotHaveIsTold() {
    refused(
        Run.of(
            "keying",
            Studio.schedule("working-heat"),
            "--keypad",
            Studio.keypad("tern"),
            "--slot",
            "9"),
        2,
        "--slot: 9 is not a slot of Tern; expected 1 to 4.");
  }

  @Test
  void readbackNeedsOneOfShownAndQuestions() {
    refused(
        Run.of("readback", Studio.schedule("working-heat"), "--keypad", Studio.keypad("gull")),
        2,
        "--shown: expected one of --shown FILE and --questions.");
    refused(
        Run.of(
            "readback",
            Studio.schedule("working-heat"),
            "--keypad",
            Studio.keypad("gull"),
            "--shown",
            Studio.schedule("working-heat")),
        2,
        "working-heat.yaml: this looks like a schedule file; a file of what the keypad shows is"
            + " expected.");
  }

  /** Java reads "800F" as 800 and "0x1p7" as 128; a person means degrees Fahrenheit, or nothing. */
  @ParameterizedTest
  @ValueSource(
      strings = {
        "couple --type K --celsius",
        "couple --type K --millivolt",
        "cast pour --alloy sterling --my-metal",
        "cast order --kiln-now 600 --fall-per-hour 100 --wants",
        "cast metal --alloy sterling --wax-g",
        "why --kind glass --found devit --highest",
        "sinter size --celsius",
        "heatwork a.yaml b.yaml --activation",
        "heatwork a.yaml b.yaml --fastest",
        "inside s.yaml --kiln k.yaml --door-s",
        "readback s.yaml --keypad p.yaml --shown x.yaml --display-reads"
      })
  void aNumberIsDigitsAlone(String words) {
    String[] typed = words.split(" ");
    String option = typed[typed.length - 1];
    for (String number : new String[] {"800F", "302d", "0x1p7", "NaN", "Infinity", "1e308"}) {
      Object[] all = java.util.Arrays.copyOf(typed, typed.length + 1, Object[].class);
      all[typed.length] = number;
      usage(
          Run.of(all),
          "Invalid value for option '%s': '%s' is not a number; expected digits alone, without a unit, such as 800 or 0.5."
              .formatted(option, number));
    }
  }

  @Test
  void aPortIsOne() {
    for (String port : new String[] {"70000", "-1"}) {
      refused(
          Run.of("demo", "--port", port),
          2,
          "--port: %s is no port; expected 0 (any free one) to 65535.".formatted(port));
      refused(
          Run.of("serve", "--store", dir.resolve("s.db"), "--port", port),
          2,
          "--port: %s is no port; expected 0 (any free one) to 65535.".formatted(port));
    }
    assertThat(dir.resolve("s.db")).doesNotExist();
  }

  @Test
  void aPourTakesNoMoreThanADay() {
    refused(
        Run.of(
            "cast",
            "order",
            "--kiln-now",
            "600",
            "--fall-per-hour",
            "100",
            "--mould",
            "a",
            "--wants",
            "500",
            "--pour-minutes",
            "1e8"),
        2,
        "--pour-minutes: \"100000000\" is not possible; expected 0 to 1440 (a day).");
  }

  @Test
  void aStoreThatCannotBeOpenedIsAFailure() throws IOException {
    Path file = file("not-a-folder", "x");
    Run run = Run.of("serve", "--store", file.resolve("heatwright.db"));

    assertThat(run.code()).isEqualTo(3);
    assertThat(run.err()).contains("cannot be opened").doesNotContain("\tat ");
  }

  /** Even a fault of ours is one sentence. */
  @Test
  void theUnexpectedIsASentenceToo() {
    java.time.Clock broken =
        new java.time.Clock() {
          @Override
          public java.time.ZoneId getZone() {
            return java.time.ZoneOffset.UTC;
          }

          @Override
          public java.time.Clock withZone(java.time.ZoneId zone) {
            return this;
          }

          @Override
          public java.time.Instant instant() {
            throw new IllegalStateException("the clock\nhas stopped");
          }
        };
    var err = new java.io.ByteArrayOutputStream();
    var utf8 = java.nio.charset.StandardCharsets.UTF_8;
    Surroundings surroundings =
        new Surroundings(
            new java.io.PrintStream(new java.io.ByteArrayOutputStream(), true, utf8),
            new java.io.PrintStream(err, true, utf8),
            broken,
            java.util.Map.of(),
            dir,
            () -> {});

    int code =
        Cli.run(
            surroundings,
            "forecast",
            Studio.schedule("working-heat").toString(),
            "--kiln",
            Studio.kiln("buoy").toString());

    assertThat(code).isEqualTo(3);
    assertThat(err.toString(utf8))
        .isEqualTo(
            "Heatwright met something it did not expect (IllegalStateException: the clock has"
                + " stopped). Please report it with the files you used."
                + System.lineSeparator());
  }
}
