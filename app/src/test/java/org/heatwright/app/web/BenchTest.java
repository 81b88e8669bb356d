package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.describe.Owner;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.ScheduleCode;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.store.EarlierText;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.keypad.KeyedValue;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BenchTest extends BenchCase {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);

  @BeforeEach
  void open() {
    openStudio(CLOCK, DemoStudio.OPENING);
  }

  @Test
  void answersOnLoopbackThatItIsWell() throws Exception {
    assertThat(bench.address().getHost()).isEqualTo("127.0.0.1");
    HttpResponse<String> health = asked.get("health");
    assertThat(health.statusCode()).isEqualTo(200);
    assertThat(health.body()).isEqualTo("{\"store\":true}");
  }

  @Test
  void aTakenPortIsToldWhenAskedForAndSteppedAsideFromWhenNot() {
    try (Bench first = Bench.start(new BenchSettings(store, CLOCK, OptionalInt.empty()));
        Bench second = Bench.start(new BenchSettings(store, CLOCK, OptionalInt.empty()))) {
      assertThat(second.address()).isNotEqualTo(first.address());
      int taken = first.address().getPort();
      assertThatThrownBy(() -> Bench.start(new BenchSettings(store, CLOCK, OptionalInt.of(taken))))
          .isInstanceOf(BenchException.class)
          .hasMessageContaining("Port " + taken);
    }
  }

  @Test
  void theFirstPageSaysItAllWithoutItsScript() throws Exception {
    HttpResponse<String> page = asked.get("plan");
    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.body())
        .contains("Thursday 3 December", "Press start Wed 2 Dec 15:15", "<path class=\"band\"")
        .contains("Why these numbers", "Read it back, blind", "Work it out");
    assertThat(page.headers().firstValue("Content-Security-Policy").orElseThrow())
        .contains("default-src 'none'")
        .doesNotContain("unsafe");
    assertThat(page.body()).doesNotContain("style=\"", "onclick", "http://", "https://");
  }

  /** Every work in every kiln; keypads in turn, so that all of them meet all kinds of work. */
  @Test
  void everyWorkOfTheDemoStudioGoesThroughEveryKiln() throws Exception {
    var keypads = store.all(Kind.KEYPAD);
    int next = 0;
    for (var work : store.all(Kind.WORK)) {
      for (var kiln : store.all(Kind.KILN)) {
        String keypad = keypads.get(next++ % keypads.size()).name();
        JsonNode answer =
            plan(Map.of("work", work.name(), "kiln", kiln.name(), "keypad", keypad), 1);
        assertThat(answer.path("errors")).isEmpty();
        String parts = answer.path("parts").toString();
        assertThat(parts)
            .as(work.name() + " in " + kiln.name() + " on " + keypad)
            .containsPattern("about \\d\\d:\\d\\d|No plan|Do not key this");
      }
      next++; // the next work meets the next ones
    }
  }

  /** Glass stands in the kiln with its curve; enamel has one of its own, from the door. */
  @Test
  void whatHappensInThePieceIsToldAndDrawn() throws Exception {
    String glass = asked.get("plan?work=Glass+disc&kiln=Anchor&keypad=Gull").body();
    assertThat(glass)
        .contains("What happens in the piece", "tension that stays in the glass", "MPa")
        .contains("<path class=\"inside n0\"", "<path class=\"inside n1\"")
        .doesNotContain("Inside the moulds", "id=\"piece\"");
    String enamel = asked.get("plan?work=Silver+cloisonne&kiln=Buoy&keypad=Tern").body();
    assertThat(enamel)
        .contains("What happens in the piece", "time in the kiln", "id=\"piece\"", "take it out")
        .contains("from the door")
        .doesNotContain("Inside the moulds");
    assertThat(asked.get("plan?work=Harbour+burnout&kiln=Capstan&keypad=Tern").body())
        .contains("Inside the moulds")
        .doesNotContain("What happens in the piece");
  }

  /** What another bench printed: the card's own PDF, sent from a form without a script. */
  @Test
  void aCardThatWasPrintedIsReadBackOntoTheShelf() throws Exception {
    String query = "work=Harbour+burnout&kiln=Capstan&keypad=Tern&by=start";
    HttpResponse<byte[]> card =
        asked.bytes(asked.request("card?" + query).POST(HttpRequest.BodyPublishers.noBody()));
    assertThat(card.statusCode()).isEqualTo(200);
    assertThat(store.all(Kind.SCHEDULE)).isEmpty();

    HttpResponse<String> kept = scan("their card.pdf", card.body(), "");
    assertThat(kept.statusCode()).isEqualTo(302);
    assertThat(kept.headers().firstValue("Location").orElseThrow()).endsWith("#shelf");
    assertThat(store.all(Kind.SCHEDULE)).hasSize(1);
    var schedule = ScheduleFile.read(store.all(Kind.SCHEDULE).get(0).text(), "kept");
    assertThat(schedule.segments()).hasSizeGreaterThan(3);

    String code = ScheduleCode.write(schedule.withName("from a phone"));
    assertThat(scan("", new byte[0], code).statusCode()).isEqualTo(302);
    assertThat(
            ScheduleFile.read(store.find(Kind.SCHEDULE, "from a phone").orElseThrow().text(), ""))
        .isEqualTo(schedule.withName("from a phone"));

    HttpResponse<String> damaged = scan("", new byte[0], code.replace(":C:", ":F:"));
    assertThat(damaged.statusCode()).isEqualTo(422);
    assertThat(damaged.body())
        .contains("code: the code is damaged or not whole", "id=\"scan\" open");
    assertThat(scan("", new byte[0], "").body()).contains("Choose a photograph or PDF of a card");
    assertThat(scan("a.png", "no picture".getBytes(StandardCharsets.UTF_8), "").body())
        .contains("a.png: this is neither a PNG or JPEG picture nor a PDF");
    assertThat(scan("", new byte[0], ScheduleCode.write(schedule.withName("x".repeat(201)))).body())
        .contains("takes at most 200");
    assertThat(store.all(Kind.SCHEDULE)).hasSize(2);
  }

  private HttpResponse<String> scan(String fileName, byte[] file, String code) throws Exception {
    return asked.post(
        "shelf/scan?kiln=Capstan",
        Map.of("code", code),
        List.of(new AskedBench.SentFile("picture", fileName, file)));
  }

  /** One question a page, without a script, the answers carried along by the form itself. */
  @Test
  void aKeypadIsDescribedByAnsweringQuestions() throws Exception {
    var keypad = KeypadFile.read(store.find(Kind.KEYPAD, "Petrel").orElseThrow().text(), "p");
    Map<String, String> knows = Owner.answers(keypad);
    knows.put("name", "The one by the window");
    HttpResponse<String> page = asked.get("keypad/new");
    assertThat(page.body()).contains("What do you call this keypad?", "Why: ");
    Pattern hidden = Pattern.compile("name=\"(a-[a-z0-9-]+)\" value=\"([^\"]*)\"");
    Pattern question = Pattern.compile("name=\"id\" value=\"([a-z0-9-]+)\"");
    int questions = 0;
    boolean slipped = false;
    while (questions < 80) {
      Matcher id = question.matcher(page.body());
      if (!id.find()) {
        break;
      }
      questions++;
      assertThat(page.statusCode()).isEqualTo(200);
      assertThat(page.body()).doesNotContain("style=\"", "onclick", "<script");
      Map<String, String> form = carried(page.body(), hidden);
      form.put("id", id.group(1));
      if (id.group(1).equals("slots") && !slipped) {
        slipped = true;
        form.put("answer", "<many>");
        page = asked.post("keypad/new", form);
        assertThat(page.body()).contains("expected a whole number from 1 to 999", "&lt;many>");
        continue;
      }
      form.put("answer", knows.get(id.group(1)));
      page = asked.post("keypad/new", form);
    }
    assertThat(questions).isBetween(30, 60);
    assertThat(page.body())
        .contains("Check it, key by key", "opens the value", "after-last: first");

    Map<String, String> back = carried(page.body(), hidden);
    back.put("undo", "segments");
    assertThat(asked.post("keypad/new", back).body()).contains("How many segments");

    Map<String, String> keep = carried(page.body(), hidden);
    keep.put("keep", "1");
    HttpResponse<String> kept = asked.post("keypad/new", keep);
    assertThat(kept.statusCode()).isEqualTo(302);
    var described =
        KeypadFile.read(
            store.find(Kind.KEYPAD, "The one by the window").orElseThrow().text(), "kept");
    assertThat(KeypadFile.write(described).replace("The one by the window", "Petrel"))
        .isEqualTo(KeypadFile.write(keypad));
  }

  private static Map<String, String> carried(String body, Pattern hidden) {
    Map<String, String> form = new LinkedHashMap<>();
    Matcher fields = hidden.matcher(body);
    while (fields.find()) {
      form.put(fields.group(1), fields.group(2).replace("&#39;", "'").replace("&#34;", "\""));
    }
    return form;
  }

  @Test
  void theInsideOfTheMouldsIsShownAtAMinuteWithoutItsScript() throws Exception {
    Matcher link =
        Pattern.compile("href=\"/(inside\\?plan=[A-Za-z0-9_-]+)\">Inside the moulds")
            .matcher(asked.get("plan?work=Harbour+burnout&kiln=Capstan").body());
    assertThat(link.find()).isTrue();
    String page = asked.get(link.group(1) + "&minute=120").body();
    assertThat(page)
        .contains("<h1>Inside the moulds</h1>", "The core begins to boil", "core boils")
        .contains("<label for=\"slide\">Minutes after the start", "value=\"120\"")
        .contains("Show this moment", "f-heat-1", "Back to the plan");
    assertThat(page).doesNotContain("style=\"", "onclick", "http://", "https://");
    assertThat(page).doesNotContain("Out of the kiln then");
    assertThat(asked.get(link.group(1)).body())
        .contains("Out of the kiln then, a pattern 8 mm from");

    HttpResponse<String> section =
        asked.get(link.group(1).replace("?", "/section?") + "&minute=240");
    assertThat(section.statusCode()).isEqualTo(200);
    assertThat(section.body()).startsWith("<svg").contains("Cut through the axis");
    assertThat(asked.get(link.group(1).replace("?", "/section?") + "&minute=0").body())
        .contains("all through");

    String enamel = asked.get("plan?work=Evening+enamel").body();
    assertThat(enamel).doesNotContain("Inside the moulds");
  }

  @Test
  void thePourOfAPlanStandsOnItsPageWithEverySource() throws Exception {
    Matcher link =
        Pattern.compile("href=\"/(pour\\?plan=[A-Za-z0-9_-]+)\">The pour")
            .matcher(asked.get("plan?work=Harbour+burnout&kiln=Capstan").body());
    assertThat(link.find()).isTrue();
    String page = asked.get(link.group(1)).body();
    assertThat(page)
        .contains("<h1>The pour: Mould and metal</h1>", "Back to the plan")
        .contains("<span class=\"figure\">500 °C</span>", "Mould, source by source")
        .contains("your own value", "shown, does not enter", "At the end of this firing")
        .contains("<dt>cores there</dt><dd>Thu 3 Dec", "under 475 °C after", "503.8 g")
        .contains("Water under molten metal explodes", "crystalline silica", "carbon monoxide")
        .contains("A quenched mould throws steam", "value=\"1.8\"");
    assertThat(page.indexOf("your own value")).isLessThan(page.indexOf("bench forum"));
    assertThat(page).doesNotContain("style=\"", "onclick", "http://", "https://", "<script");
    String powder = asked.get(link.group(1) + "&what=powder").body();
    assertThat(powder).contains("Weigh 3225 g of powder", "value=\"90\"");
    assertThat(asked.get("plan?work=Evening+enamel").body()).doesNotContain(">The pour</a>");
  }

  /** The same numbers as the command line's, which were computed apart or by hand. */
  @Test
  void aPourIsAskedForWithoutAPlan() throws Exception {
    assertThat(asked.get("pour?what=metal&asked=1&alloy=sterling-925&wax-g=5&method=vacuum").body())
        .contains("sterling-925: melt 59.98 g", "Density of the metal")
        .contains("What was given holds the sprues");
    assertThat(
            asked
                .get(
                    "pour?what=powder&asked=1&diameter-mm1=75&height-mm1=100&wax-g1=20"
                        + "&diameter-mm2=75&height-mm2=100&scale-g=5")
                .body())
        .contains("Weigh 1140 g of powder and 455 g of water")
        .contains("“Slurry of a kilogram, L (data sheet)” from the data sheet goes first");
    assertThat(asked.get("pour?what=size&asked=1&wanted-mm=18,2").body())
        .contains("For 18.2 mm in metal make the pattern 18.48 mm");
    assertThat(
            asked
                .get(
                    "pour?what=order&asked=1&mould1=lace&wants1=630&count1=3&mould2=signet&wants2=450"
                        + "&count2=2&kiln-now=730&fall-per-hour=120")
                .body())
        .contains("lace x 3: ready at 110", "All at 540 °C would");
    assertThat(asked.get("pour").body()).contains("<h1>The pour: Mould and metal</h1>");
    assertThat(asked.get("pour?what=nonsense").statusCode()).isEqualTo(200);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          what=temperatures&alloy=lead | alloy | is not known; expected one of sterling-925
          what=temperatures&alloy= | alloy | not given; expected one such as sterling-925.
          what=temperatures&alloy=sterling&thinnest-mm=thin | thinnest-mm | “thin” is no number
          what=temperatures&alloy=sterling&my-mould=9999 | my-mould | expected 20 to 2000 °C
          what=metal&alloy=sterling&wax-g=3&resin-g=4 | resin-g | “Wax, g” is given too
          what=metal&alloy=sterling&wax-g=-3 | wax-g | is not possible; expected a number above zero
          what=powder&diameter-mm1=75 | height-mm1 | is needed: write a number.
          what=powder&diameter-mm1=75&height-mm1=100&diameter-mm2=75&height-mm2=100&wax-g2=900 | wax-g2 | must be smaller than its mould
          what=powder&diameter-mm1=75&height-mm1=100&count1=1.5 | count1 | write a whole number
          what=powder&diameter-mm1=75&height-mm1=100&water-powder=40 | water-powder | expected 0.2 to 0.8
          what=size&wanted-mm=10&shrinkage-percent=50 | shrinkage-percent | must be 0 to 20 %
          what=order&wants1=630&kiln-now=600&fall-per-hour=100 | rise-per-hour | the kiln must go up
          what=order&wants1=630&wants2=5&kiln-now=700&fall-per-hour=100 | wants2 | expected 20 to 2000
          """)
  void aWrongFieldOfAPourIsToldBesideIt(String query, String field, String told) throws Exception {
    HttpResponse<String> answer = asked.get("pour?asked=1&" + query);
    assertThat(answer.statusCode()).isEqualTo(200);
    Matcher error =
        Pattern.compile("id=\"%s-error\">([^<]*)<".formatted(field)).matcher(answer.body());
    assertThat(error.find()).isTrue();
    assertThat(error.group(1)).contains(told).doesNotContain("--");
    assertThat(answer.body()).contains("aria-invalid=\"true\"");
  }

  @Test
  void aDeepLinkKeepsEveryChoiceAndEdit() throws Exception {
    JsonNode first = plan(Map.of("work", "Harbour burnout", "kiln", "Capstan"), 1);
    JsonNode edited =
        plan(
            Map.of(
                "work", "Harbour burnout",
                "kiln", "Capstan",
                "of", first.path("of").asText(),
                "hold2", "5:10"),
            1);
    String link = edited.path("query").asText();
    assertThat(link).contains("hold2=5%3A10", "at=", "press=");
    String page = asked.get("plan?" + link).body();
    assertThat(page).containsPattern("id=\"hold2\"[^>]*value=\"5:10\"");
    assertThat(edited.path("forecast").path("endSeconds").path("median").asDouble())
        .isGreaterThan(first.path("forecast").path("endSeconds").path("median").asDouble());
  }

  @Test
  void editsOfOtherWorkArePutAsideAndToldSo() throws Exception {
    JsonNode answer =
        plan(
            Map.of(
                "work", "Mixed moulds",
                "kiln", "Capstan",
                "of", "Harbour burnout@Capstan/4C",
                "hold2", "9:59"),
            1);
    assertThat(answer.path("notes").toString()).contains("put aside");
    assertThat(answer.path("query").asText()).doesNotContain("hold2");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "slot    | 0                | program slots 1 to",
        "slot    | three            | is none of them",
        "at      | next Tuesday     | write it like 2026-",
        "press   | 2026-13-01T10:00 | is no date and time",
        "target1 | 9o0              | is a number in °C",
        "kiln    | Dinghy           | There is no kiln named",
      })
  void aWrongFieldIsToldInOneSentenceBesideIt(String field, String typed, String told)
      throws Exception {
    JsonNode answer = plan(Map.of(field, typed), 1);
    assertThat(answer.path("errors").path(field).asText()).contains(told);
    assertThat(answer.path("parts")).isEmpty();
    String page = asked.get("plan?" + field + "=" + AskedBench.encoded(typed)).body();
    assertThat(page).contains("id=\"" + field + "-error\"").contains(told);
  }

  @Test
  void aFileThatCannotBeReadIsToldWithItsLineAndStaysInTheForm() throws Exception {
    HttpResponse<String> answer =
        asked.post(
            "shelf", Map.of("kind", "kiln", "name", "Dinghy", "text", "name: Dinghy\nchamber: 7"));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("line 2", "name: Dinghy\nchamber: 7");
    assertThat(store.find(Kind.KILN, "Dinghy")).isEmpty();
  }

  @Test
  void aFileOfOnesOwnStandsOnTheShelfAsText() throws Exception {
    String text = store.find(Kind.WORK, "Harbour burnout").orElseThrow().text();
    HttpResponse<String> answer =
        asked.post("shelf", Map.of("kind", "work", "name", "<b>Mine</b>", "text", text));
    assertThat(answer.statusCode()).isEqualTo(302);
    assertThat(store.find(Kind.WORK, "<b>Mine</b>").orElseThrow().text()).isEqualTo(text);
    assertThat(asked.get("plan").body()).contains("&lt;b&gt;Mine").doesNotContain("<b>Mine");
  }

  @Test
  void anEmptyShelfSaysWhatIsMissing() throws Exception {
    try (Store empty = Store.temporary(CLOCK);
        Bench own = Bench.start(new BenchSettings(empty, CLOCK, OptionalInt.of(0)))) {
      HttpResponse<String> page = new AskedBench(own).get("plan");
      assertThat(page.statusCode()).isEqualTo(200);
      assertThat(page.body()).contains("There is no work on the shelf yet");
    }
  }

  @Test
  void aNewcomerGetsFromAnEmptyShelfToAPlanByTheExamples() throws Exception {
    try (Store empty = Store.temporary(CLOCK);
        Bench own = Bench.start(new BenchSettings(empty, CLOCK, OptionalInt.of(0)))) {
      AskedBench newcomer = new AskedBench(own);
      String page = newcomer.get("plan").body();
      for (Kind kind : List.of(Kind.WORK, Kind.KILN, Kind.KEYPAD)) {
        assertThat(page).contains("This is an example to start from");
        assertThat(page).contains("value=\"" + kind.word() + "\" selected");
        HttpResponse<String> kept =
            newcomer.post(
                "shelf",
                Map.of("kind", kind.word(), "name", "First", "text", DemoStudio.example(kind)));
        assertThat(kept.headers().firstValue("Location").orElseThrow()).contains("=First");
        page = newcomer.get("plan").body();
      }
      assertThat(page).contains("Work ready").doesNotContain("example to start from", "No plan");
    }
  }

  @Test
  void aKeptScheduleCanBeFetchedAsItsFile() throws Exception {
    String query = plan(DemoStudio.OPENING, 1).path("query").asText();
    assertThat(asked.post("keep?" + query, Map.of()).statusCode()).isEqualTo(302);
    var kept = store.all(Kind.SCHEDULE).get(0);
    assertThat(asked.get("schedules/" + kept.id()).body())
        .isEqualTo(kept.text())
        .contains("segments:");
    assertThat(asked.get("schedules/no-such").statusCode()).isEqualTo(404);
  }

  @Test
  void whatStopsAFiringStandsBesideTheAnswer() throws Exception {
    Map<String, String> hot = new LinkedHashMap<>(DemoStudio.OPENING);
    hot.put("of", plan(DemoStudio.OPENING, 1).path("of").asText());
    hot.put("target3", "900");
    String answer = plan(hot, 1).path("parts").path("answer").asText();
    assertThat(answer).contains("900 °C", "finding stop", "Do not fire this yet");
  }

  @Test
  void anEmptyReadBackTellsNothingOfThePlan() throws Exception {
    String query = plan(DemoStudio.OPENING, 1).path("query").asText();
    String page = asked.post("readback?" + query, Map.of("shown-slot", "3")).body();
    assertThat(page).contains("Not compared yet").doesNotContain("must be", "730");
  }

  @Test
  void theReadBackHidesEveryValueOfThePlanEvenAnEditedOne() throws Exception {
    Map<String, String> edited = new LinkedHashMap<>(DemoStudio.OPENING);
    edited.put("of", plan(DemoStudio.OPENING, 1).path("of").asText());
    edited.put("target3", "727");
    String keying = plan(edited, ForecastRequest.USUAL_DRAWS).path("parts").path("keying").asText();
    assertThat(keying).contains("727");
    Matcher link = Pattern.compile("href=\"/(readback[^\"]*)\"").matcher(keying);
    assertThat(link.find()).isTrue();
    String page = asked.get(link.group(1)).body();
    assertThat(page).contains("Read it back").doesNotContain("727", "370", "150");
    Matcher back = Pattern.compile("href=\"/(plan\\?plan=[^\"]*)\"").matcher(page);
    assertThat(back.find()).isTrue();
    assertThat(asked.get(back.group(1)).headers().firstValue("Location").orElseThrow())
        .contains("target3=727");
    assertThat(asked.get("plan?plan=**").statusCode()).isEqualTo(400);
  }

  @Test
  void rightValuesInAnUnknownSlotAreNotProven() throws Exception {
    Choices choices = Choices.of(DemoStudio.OPENING);
    Firing firing = new FiringPlanner(store, CLOCK).plan(choices, 1).firing().orElseThrow();
    Map<String, String> typed = new LinkedHashMap<>();
    List<KeyedValue> values = firing.program().values();
    for (Page.Ask ask : ReadbackDesk.ask(firing).shown()) {
      values.stream()
          .filter(v -> ask.label().endsWith(v.place()))
          .findFirst()
          .ifPresent(v -> typed.put(ask.name(), v.digits()));
    }
    typed.put("shown14", "End");
    typed.put("overnight", "on");
    typed.put("cold-display", "19");
    typed.put("cold-thermometer", "19");
    assertThat(ReadbackDesk.answer(firing, typed).verdict().orElseThrow().head())
        .isEqualTo("Values right, slot open");
    typed.put("shown-slot", "3");
    assertThat(ReadbackDesk.answer(firing, typed).verdict().orElseThrow().right()).isTrue();
    typed.put("cold-display", "warm");
    Page.Reading unread = ReadbackDesk.answer(firing, typed);
    assertThat(unread.verdict().orElseThrow().right()).isFalse();
    assertThat(unread.unit().orElseThrow().remark()).contains("“warm” is no temperature");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // heat begins in the afternoon of the day before: people are up
        "2026-12-10T10:00 | 2026-12-09T1[67]:\\d[05]",
        // heat would begin in the night: the evening before
        "2026-12-10T21:00 | 2026-12-09T21:00",
        // soon enough: press as soon as it is keyed
        "2026-12-03T10:00 | 2026-12-02T15:15",
      })
  void whoDoesNotSayWhenStartIsPressedIsNotMadeToWaitForDays(String at, String press)
      throws Exception {
    Map<String, String> far = new LinkedHashMap<>(DemoStudio.OPENING);
    far.put("at", at);
    PlanResult result = new FiringPlanner(store, CLOCK).plan(Choices.of(far), 1);
    assertThat(result.choices().press()).matches(press);
    assertThat(result.firing().orElseThrow().program().fits()).isTrue();
  }

  // ---- what is known of a kiln

  @Test
  void aKilnsPageShowsItsLogsAgainstTheNameplatesForecast() throws Exception {
    assertThat(asked.get("plan?kiln=Anchor").body()).contains("href=\"/kiln?name=Anchor\"");
    String page = settled("kiln?name=Anchor");
    assertThat(page)
        .contains("the nameplate", "Learn: 4 logs have not taught anything yet")
        .contains("Log against forecast: Dry run (invented), 14 November 2026")
        .contains("Of the kiln only the nameplate is known", "What the forecast missed")
        .containsPattern("From cold to 800 °C at full power, empty: \\d+ to \\d+ min\\.")
        .doesNotContain("What its logs have taught", "style=\"", "NaN");
    for (DemoStudio.Logged log : DemoStudio.LOGS) {
      assertThat(page).contains(log.name());
    }
    // Each plot is there for wide screens and for a phone, with ids of its own.
    assertThat(page.split("<svg class=\"plot wide\"", -1)).hasSize(3);
    assertThat(page.split("<svg class=\"plot narrow\"", -1)).hasSize(3);
    assertThat(page).contains("id=\"watched-firing\"", "<path class=\"measured\"");
    Matcher ids = Pattern.compile(" id=\"([^\"]+)\"").matcher(page);
    List<String> all = ids.results().map(m -> m.group(1)).toList();
    assertThat(all).doesNotHaveDuplicates();
  }

  /** A page once all of it is worked out. */
  private String settled(String path) throws Exception {
    return asked.settled(path);
  }

  @Test
  void aKilnWithDatedLogsTellsHowItHasChanged() throws Exception {
    String page = settled("kiln?name=Anchor");
    assertThat(page)
        .contains("How it has changed over its firings", "Health of Anchor over time")
        .containsPattern("Power[^.]* 5 September 2026");
    assertThat(asked.get("kiln/health.svg?name=Anchor").body()).contains("Full power");
    assertThat(asked.get("kiln/health.svg?name=Buoy").statusCode()).isEqualTo(404);
  }

  @Test
  void anotherLogIsShownByItsAddress() throws Exception {
    String id = store.logs("Anchor").get(2).id();
    assertThat(settled("kiln?name=Anchor&log=" + id))
        .contains("Log against forecast: Slow rise (invented), 17 October 2026");
  }

  @Test
  void aKilnWithoutLogsSaysWhatToBringAndOneThatIsNotThereIsNotFound() throws Exception {
    assertThat(asked.get("kiln?name=Capstan").body())
        .contains("Bring the log of a firing", "There is none yet");
    assertThat(asked.get("kiln?name=Dinghy").statusCode()).isEqualTo(404);
    assertThat(asked.get("kiln").statusCode()).isEqualTo(404);
  }

  @Test
  void plotsCanBeTakenAwayAsFiles() throws Exception {
    String page = settled("kiln?name=Anchor");
    Matcher links = Pattern.compile("href=\"/(kiln/[^\"]+)\"").matcher(page);
    List<String> found = links.results().map(m -> m.group(1).replace("&amp;", "&")).toList();
    assertThat(found).hasSize(6);
    for (String link : found) {
      HttpResponse<String> file = asked.get(link);
      assertThat(file.statusCode()).isEqualTo(200);
      String type = file.headers().firstValue("Content-Type").orElseThrow();
      assertThat(type).startsWith(link.contains(".svg") ? "image/svg+xml" : "image/png");
      assertThat(file.body()).contains(link.contains(".svg") ? "<svg " : "PNG");
      assertThat(file.headers().firstValue("Content-Disposition").orElseThrow())
          .contains("attachment");
    }
    assertThat(asked.get("kiln/learned.svg?name=Anchor").statusCode()).isEqualTo(404);
    assertThat(
            asked
                .get("kiln/forecast.gif?name=Anchor&log=" + store.logs("Anchor").get(0).id())
                .statusCode())
        .isEqualTo(404);
    assertThat(asked.get("kiln/forecast?name=Anchor").statusCode()).isEqualTo(404);
  }

  @Test
  void whatTheTickedLogsTeachIsKeptAndTold() throws Exception {
    List<FiringLog> logs = store.logs("Anchor");
    String before = store.find(Kind.KILN, "Anchor").orElseThrow().text();
    HttpResponse<String> done =
        waited(
            asked.post(
                "kiln/learn?name=Anchor",
                "use=%s&use=%s".formatted(logs.get(0).id(), logs.get(3).id())));
    assertThat(path(done)).isEqualTo("kiln?name=Anchor");
    assertThat(store.logs("Anchor"))
        .extracting(FiringLog::part)
        .containsExactly(
            FiringLog.Part.TAUGHT,
            FiringLog.Part.ASIDE,
            FiringLog.Part.ASIDE,
            FiringLog.Part.TAUGHT);
    assertThat(store.earlier(Kind.KILN, "Anchor"))
        .extracting(EarlierText::text)
        .containsExactly(before);
    String page = settled("kiln?name=Anchor");
    assertThat(page)
        .contains("2 firings", "learned 2 December 2026", "What its logs have taught")
        .contains("What is known of Anchor from 2 firings", "Nothing to learn. Bring the next log")
        .contains("learned from: the fit is within", "put aside")
        .contains("The forecast has learned from this log.")
        .contains("What this display could not have shown", "would not have shown on this display")
        .doesNotContain("kept out of what was learned");
    Matcher sure =
        Pattern.compile(
                "empty: (\\d+) to (\\d+) min\\. From the nameplate alone: (\\d+) to (\\d+) min")
            .matcher(page);
    assertThat(sure.find()).as(page).isTrue();
    assertThat(number(sure, 2) - number(sure, 1))
        .isLessThan((number(sure, 4) - number(sure, 3)) / 2);
    assertThat(asked.get("kiln/learned.svg?name=Anchor").body()).contains("Full power");
    // The plan of a firing takes it up.
    assertThat(asked.get("plan?work=Harbour+burnout&kiln=Anchor").body())
        .contains("2 logged firings");
  }

  @Test
  void whatWentWrongInAFiringIsToldBesideItsLog() throws Exception {
    FiringLog log = store.logs("Anchor").get(3);
    FiringLog told =
        log.after(
            FiringLog.Part.TAUGHT,
            OptionalDouble.of(2),
            new FiringLog.Showed(List.of("At +1:46 the relay stuck."), List.of()));
    store.keepLesson("Anchor", store.find(Kind.KILN, "Anchor").orElseThrow().text(), List.of(told));
    assertThat(settled("kiln?name=Anchor&log=" + log.id()))
        .contains("At +1:46 the relay stuck. It was kept out of what was learned.")
        .doesNotContain("What this display could not have shown");
  }

  /** The answer once what it begins is over. */
  private HttpResponse<String> waited(HttpResponse<String> begun) throws Exception {
    HttpResponse<String> answer = begun;
    for (int i = 0; i < 200 && goesOn(answer); i++) {
      answer = answer.statusCode() == 302 ? asked.get(path(answer)) : asked.get(path(begun));
    }
    return answer;
  }

  private static boolean goesOn(HttpResponse<String> answer) {
    return AskedBench.going(answer).isPresent()
        || answer.statusCode() == 200 && answer.body().contains("Stop it; nothing is changed then");
  }

  private static String path(HttpResponse<String> answer) {
    return answer.headers().firstValue("Location").orElse("").replaceFirst("^(http://[^/]+)?/", "");
  }

  private static int number(Matcher match, int group) {
    return Integer.parseInt(match.group(group));
  }

  @Test
  void learningFromNothingIsToldInOneSentence() throws Exception {
    HttpResponse<String> answer = waited(asked.post("kiln/learn?name=Anchor", Map.of()));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("Tick the logs to learn from, one at least.");
  }

  @Test
  void aLogIsPutBesideItsKilnWithTheScheduleThatRan() throws Exception {
    String ran = "log:" + store.logs("Anchor").get(0).id();
    String csv = "time_s,chamber_c\n0,20\n600,320\n1200,560\n1800,850\n";
    HttpResponse<String> answer =
        waited(
            asked.post(
                "kiln/log?name=Anchor",
                Map.of(
                    "logname", "<b>By hand</b>", "date", "2026-11-30", "csv", csv, "chosen", ran)));
    assertThat(answer.statusCode()).isEqualTo(302);
    FiringLog kept = store.logs("Anchor").get(4);
    assertThat(kept.csv()).isEqualTo(csv);
    assertThat(kept.schedule()).isEqualTo(store.logs("Anchor").get(0).schedule());
    assertThat(kept.part()).isEqualTo(FiringLog.Part.NEW);
    String page = settled("kiln?name=Anchor");
    assertThat(page)
        .contains("&lt;b&gt;By hand", "30 November 2026", "read off the display")
        .doesNotContain("<b>By hand");
  }

  /** Its contents count, not its name, its date, its schedule, or how its file is written. */
  @Test
  void theSameLogIsNotPutBesideItsKilnTwice() throws Exception {
    FiringLog first = store.logs("Anchor").get(0);
    String ran = "log:" + store.logs("Anchor").get(1).id();
    for (String csv : List.of(first.csv(), first.csv().replace("\r", "").replace("\n", "\r\n"))) {
      HttpResponse<String> answer =
          waited(
              asked.post(
                  "kiln/log?name=Anchor",
                  Map.of("logname", "again", "date", "2026-11-30", "csv", csv, "chosen", ran)));
      assertThat(answer.statusCode()).isEqualTo(422);
      assertThat(answer.body())
          .contains(
              "The log: it is that of “%s”, %s, which lies beside this kiln already; put that one away on the shelf first if you mean to bring it anew."
                  .formatted(
                      first.name(),
                      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.UK).format(first.date())));
    }
    assertThat(store.logs("Anchor")).hasSize(4);
    store.away().putAway("log", first.id());
    assertThat(
            waited(
                    asked.post(
                        "kiln/log?name=Anchor",
                        Map.of("date", "2026-11-30", "csv", first.csv(), "chosen", ran)))
                .statusCode())
        .isEqualTo(302);
    assertThat(store.logs("Anchor")).hasSize(4);
  }

  /** One that was put back, or came with an archive, is not learned from twice. */
  @Test
  void theSameLogTeachesOnce() throws Exception {
    FiringLog first = store.logs("Anchor").get(0);
    FiringLog again =
        store.keepLog(
            "Anchor",
            "Again",
            LocalDate.of(2026, 11, 30),
            first.csv() + "\n",
            first.schedule(),
            first.firing());
    HttpResponse<String> answer =
        waited(
            asked.post(
                "kiln/learn?name=Anchor", "use=%s&use=%s".formatted(first.id(), again.id())));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains(first.name())
        .contains("“Again” of 30 November 2026 are the same log: tick one of the two.");
    assertThat(store.earlier(Kind.KILN, "Anchor")).isEmpty();
  }

  /** What the reader of a log finds odd stands on the kiln's page. */
  @Test
  void whatIsOddInALogIsToldBesideIt() throws Exception {
    String ran = "log:" + store.logs("Anchor").get(0).id();
    String ours = "time_s,chamber_c\n0,20\n60,40\n120,60\n180,80\n3840,700\n3780,690\n3900,695\n";
    waited(
        asked.post(
            "kiln/log?name=Anchor", Map.of("date", "2026-11-30", "csv", ours, "chosen", ran)));
    assertThat(settled("kiln?name=Anchor"))
        .contains("The log has a gap of 3", "There are only ")
        .containsPattern("Line \\d+ is out of order|Line \\d+: the clock goes back");
    String foreign =
        "time;temp °C\n10:00;20\n10:01;40\n10:02;60\n10:03;80\n11:04;700\n11:05;690\n11:06;695\n";
    HttpResponse<String> read =
        waited(
            asked.post(
                "kiln/log?name=Anchor",
                Map.of("date", "2026-11-30", "csv", foreign, "chosen", ran)));
    assertThat(read.body())
        .contains("How this log was read", "The log has a gap of 3660 s after 180 s");
    assertThat(store.logs("Anchor")).hasSize(5);
  }

  @Test
  void aLogOfTooFewReadingsIsRefused() throws Exception {
    String ran = "log:" + store.logs("Anchor").get(0).id();
    HttpResponse<String> answer =
        waited(
            asked.post(
                "kiln/log?name=Anchor",
                Map.of("date", "2026-11-30", "csv", "time_s,chamber_c\n0,20\n", "chosen", ran)));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("it has 1 reading; a firing needs 3 at least");
    assertThat(store.logs("Anchor")).hasSize(4);
  }

  /** A browser gets a page with the way back; whoever asks for no page gets the sentence. */
  @Test
  void whatHasNoPageIsToldOnAPageWithTheWayBack() throws Exception {
    for (String path :
        List.of("kiln?name=Nobody", "no-such", "no/such/page", "firing?id=nothing")) {
      HttpResponse<String> page = asked.send(asked.request(path).header("Accept", "text/html"));
      assertThat(page.statusCode()).as(path).isEqualTo(404);
      assertThat(page.headers().firstValue("Content-Type").orElseThrow()).startsWith("text/html");
      assertThat(page.body()).contains("There is no such", "aria-label=\"Places\"", "href=\"/\"");
      HttpResponse<String> bare = asked.get(path);
      assertThat(bare.statusCode()).isEqualTo(404);
      assertThat(bare.headers().firstValue("Content-Type").orElseThrow())
          .isEqualToIgnoringCase("text/plain;charset=utf-8");
    }
    assertThat(asked.get("firing/shown?id=x").headers().firstValue("Location"))
        .contains("/firing?id=x");
  }

  /** The work's ready-by has not passed where only the press lies after it. */
  @Test
  void aPressAfterTheWorksReadyBySaysSo() throws Exception {
    Map<String, String> late = new LinkedHashMap<>(DemoStudio.OPENING);
    late.put("press", "2026-12-03T12:00");
    JsonNode told = plan(late, 1);
    assertThat(told.path("notes").toString())
        .contains("Start is pressed after the work's own ready-by")
        .doesNotContain("ready-by has passed");
  }

  @Test
  void aCountThatIsTooLargeIsToldSo() throws Exception {
    assertThat(
            asked.get("pour?what=powder&diameter-mm1=75&height-mm1=100&count1=5000&asked=1").body())
        .contains("“5000” is too many; write a whole number up to 1000.")
        .doesNotContain("is no count");
  }

  /** What leads on from the plan follows the kiln that is chosen. */
  @Test
  void whatIsInTheSlotsIsSwappedWithTheKiln() throws Exception {
    Map<String, String> other = new LinkedHashMap<>(DemoStudio.OPENING);
    other.put("kiln", "Anchor");
    assertThat(plan(other, 1).path("parts").path("slotsof").asText())
        .contains("what is in every program slot of Anchor")
        .doesNotContain("Capstan");
  }

  /** Nobody reads another program back than the one that was planned. */
  @Test
  void aPlansAddressThatLostAPartOpensNoOtherPlan() throws Exception {
    String whole =
        Choices.of(
                Map.of("work", "Harbour burnout", "kiln", "Capstan", "keypad", "Tern", "slot", "3"))
            .sealed();
    assertThat(Choices.of(Map.of("plan", whole)).work()).isEqualTo("Harbour burnout");
    for (String page : List.of("readback", "rehearse", "inside", "pocket.html", "plan")) {
      for (String cut :
          List.of("zz", whole.substring(0, 40), whole.substring(0, whole.length() - 1))) {
        HttpResponse<String> answer = asked.get(page + "?plan=" + cut);
        assertThat(answer.statusCode()).as(page + " " + cut).isEqualTo(400);
        assertThat(answer.body()).startsWith("The address of this plan is incomplete");
      }
    }
  }

  @Test
  void aLogOfEverySecondIsTakenAndDrawnLightly() throws Exception {
    StringBuilder csv = new StringBuilder("time_s,chamber_c,setpoint_c,power_w\n");
    for (int i = 0; i < 50_000; i++) {
      csv.append("%d,%.2f,850.0,2600.0%n".formatted(i, 20 + 830 * (1 - Math.exp(-i / 900.0))));
    }
    assertThat(csv.length()).isGreaterThan(1_000_000);
    String ran = "log:" + store.logs("Anchor").get(0).id();
    HttpResponse<String> answer =
        waited(
            asked.post(
                "kiln/log?name=Anchor",
                Map.of("date", "2026-11-30", "csv", csv.toString(), "chosen", ran)));
    assertThat(answer.statusCode()).isEqualTo(302);
    String page = settled("kiln?name=Anchor");
    assertThat(page).contains("Log against forecast: dry-run, 30 November 2026");
    assertThat(page.length()).isLessThan(300_000);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''                            | 2026-11-30 | name: x            | there is none; choose its file",
        "time_s,chamber_c\\n0,twenty  | 2026-11-30 | name: x            | line 2",
        "time_s,chamber_c\\n0,20      | 2026-11-30 | ''                 | choose the one that ran",
        "time_s,chamber_c\\n0,20      | 2026-11-30 | name: x            | The schedule",
        "time_s,chamber_c\\n0,20      | yesterday  | GOOD               | “yesterday” is none",
      })
  void aLogThatCannotBeTakenIsToldAndStaysInTheForm(
      String csv, String date, String schedule, String told) throws Exception {
    String good = store.logs("Anchor").get(0).schedule();
    Map<String, String> form =
        Map.of(
            "csv",
            csv.replace("\\n", "\n"),
            "date",
            date,
            "schedule",
            schedule.equals("GOOD") ? good : schedule);
    HttpResponse<String> answer = waited(asked.post("kiln/log?name=Anchor", form));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains(told, "<details id=\"bring\" open");
    assertThat(answer.body()).contains(form.get("csv").lines().findFirst().orElse(""));
    assertThat(store.logs("Anchor")).hasSize(4);
  }

  @Test
  void aForeignPageOrNameIsTurnedAway() throws Exception {
    HttpRequest.Builder foreign =
        asked
            .request("keep")
            .header("Origin", "http://example.com")
            .POST(HttpRequest.BodyPublishers.noBody());
    assertThat(asked.send(foreign).statusCode()).isEqualTo(403);
    assertThat(store.all(Kind.SCHEDULE)).isEmpty();
    try (Socket socket = new Socket("127.0.0.1", bench.address().getPort())) {
      socket
          .getOutputStream()
          .write(
              "GET / HTTP/1.1\r\nHost: example.com\r\nConnection: close\r\n\r\n"
                  .getBytes(StandardCharsets.US_ASCII));
      assertThat(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
          .startsWith("HTTP/1.1 403");
    }
  }

  private JsonNode plan(Map<String, String> fields, int draws) throws Exception {
    ObjectMapper mapper = new ObjectMapper();
    String body = mapper.writeValueAsString(Map.of("fields", fields, "draws", draws));
    HttpResponse<String> answer =
        asked.send(asked.request("plan").POST(HttpRequest.BodyPublishers.ofString(body)));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    return mapper.readTree(answer.body());
  }
}
