package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.firings.MovingClock;
import org.heatwright.app.slots.SlotBook;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A firing from its plan to its result, told by hand and without a script. */
class FiringsBenchTest extends BenchCase {

  /** A winter afternoon; the demo kilns stand in Lisbon, which then has the world's own time. */
  private static final Instant AFTERNOON = Instant.parse("2026-12-02T15:00:00Z");

  private static final String BURNOUT =
      "work=Harbour+burnout&kiln=Capstan&keypad=Gull&slot=3&by=start";

  private MovingClock clock;
  private FiringBook book;

  @BeforeEach
  void open() {
    clock = new MovingClock(AFTERNOON, ZoneId.of("Europe/Lisbon"));
    openStudio(clock);
    book = new FiringBook(store, clock);
  }

  @Test
  void nowSaysThatNothingIsHotAndWhereToBegin() throws Exception {
    assertThat(asked.settled(""))
        .contains("Nothing is hot.", "href=\"/plan\"", "aria-current=\"true\"")
        .doesNotContain("What does the display say");
    assertThat(asked.get("?work=Harbour+burnout").headers().firstValue("Location").orElseThrow())
        .startsWith("/plan?work=Harbour+burnout");
    assertThat(asked.get("firings").body()).contains("5 firings.", "Slow rise (invented)", ">log<");
    assertThat(asked.get("firings?kiln=Capstan").body()).contains("Nothing is in the book yet");
    assertThat(asked.get("kilns").body()).contains("Anchor", "Buoy", "Capstan", "nameplate alone");
    assertThat(asked.get("help").body()).contains("What can hurt", "Counter-enamel");
    assertThat(asked.get("firing?id=nothing").statusCode()).isEqualTo(404);
  }

  @Test
  void aFiringIsWatchedByHandFromItsStartToItsResult() throws Exception {
    assertThat(asked.post("firings?" + BURNOUT, Map.of()).statusCode()).isEqualTo(302);
    FiringRecord planned = book.all().get(0);
    assertThat(planned.state()).isEqualTo(FiringRecord.State.PLANNED);
    assertThat(asked.settled("")).contains("press start on Capstan", "One is planned");

    asked.post("firing/pressed?id=" + planned.id(), Map.of());
    String hot = asked.settled("");
    assertThat(hot).contains("One kiln is hot.", "Segment 1 of 4: on the way to 150 °C");
    String first = figure(hot);

    // Told late: half way up the first ramp the display lags as it would at half the speed.
    clock.move(Duration.ofMinutes(80));
    String expected = between(asked.settled(""), "should say <strong>", "</strong>");
    int low = Integer.parseInt(expected.split(" ")[0]);
    assertThat(
            asked
                .post("firing/shown?id=" + planned.id(), Map.of("shows", "" + (low + 1)))
                .statusCode())
        .isEqualTo(302);
    assertThat(asked.settled("")).contains("says normal", "Normal: ");
    clock.move(Duration.ofMinutes(200));
    asked.post("firing/shown?id=" + planned.id(), Map.of("shows", "24"));
    String cold = asked.settled("");
    assertThat(cold).contains("says odd").containsPattern("Not heating: |Odd: |Behind: ");

    String line =
        between(asked.get("firing?id=" + planned.id()).body(), "name=\"line\" value=\"", "\"");
    assertThat(line).isNotEmpty();
    String slip = book.find(planned.id()).orElseThrow().all(Happening.SHOWN).get(1).id();
    HttpResponse<String> back = asked.post("firing/back?id=" + planned.id(), Map.of("line", slip));
    assertThat(asked.get(back.headers().firstValue("Location").orElseThrow()).body())
        .contains("That line was taken back", "Put it back");
    assertThat(asked.settled("")).contains("says normal");
    asked.post("firing/back?id=" + planned.id(), Map.of("line", slip, "again", "1"));
    assertThat(asked.settled("")).contains("says odd");
    asked.post("firing/back?id=" + planned.id(), Map.of("line", slip));

    // At the ready time it asks how it came out, and says what is to be done.
    clock.move(Duration.ofHours(12));
    String ready = asked.settled("");
    assertThat(ready).contains("How did it come out?", "value=\"incomplete\"");
    assertThat(figure(ready)).isNotEmpty();
    assertThat(first).matches("\\d\\d:\\d\\d to \\d\\d:\\d\\d");
    asked.post(
        "firing/result?id=" + planned.id(), Map.of("outcome", "incomplete", "note", "one arm"));
    assertThat(asked.settled("")).contains("Nothing is hot.", "incomplete");
    FiringRecord done = book.find(planned.id()).orElseThrow();
    assertThat(done.state()).isEqualTo(FiringRecord.State.DONE);
    assertThat(done.result().orElseThrow().note()).isEqualTo("one arm");
    assertThat(asked.get("firings?kiln=Capstan").body()).contains("class=\"fault\"", "One firing.");
    assertThat(asked.get("firing?id=" + planned.id()).body())
        .contains("one arm", "at 70 °C/h to 150 °C", "Nobody had read the slot back");
  }

  /** A hot kiln leaves Now only when somebody says that it is out. */
  @Test
  void aResultIsTakenOnlyWhenTheWorkIsOut() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String id = book.all().get(0).id();
    clock.move(Duration.ofMinutes(4));
    String page = asked.get("firing?id=" + id).body();
    assertThat(page).contains("Is it out?").doesNotContain("How did it come out?");
    HttpResponse<String> early =
        asked.post("firing/result?id=" + id, Map.of("outcome", "incomplete"));
    assertThat(early.statusCode()).isEqualTo(422);
    assertThat(early.body()).contains("By the clock it is still hot");
    assertThat(book.find(id).orElseThrow().state()).isEqualTo(FiringRecord.State.RUNNING);
    asked.post("firing/out?id=" + id, Map.of("from", "firing", "why", ""));
    assertThat(asked.get("firing?id=" + id).body()).contains("How did it come out?");
    asked.post("firing/result?id=" + id, Map.of("outcome", "incomplete"));
    assertThat(book.find(id).orElseThrow().result().orElseThrow().outcome())
        .isEqualTo("incomplete");
  }

  @Test
  void aResultInTimeTellsWhenItCameOut() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String id = book.all().get(0).id();
    clock.move(Duration.ofHours(30));
    asked.post("firing/result?id=" + id, Map.of("outcome", "good"));
    assertThat(book.find(id).orElseThrow().out()).contains(clock.instant());
  }

  /** One kiln fires one program at a time: a second start asks for the first. */
  @Test
  void aKilnThatIsHotIsNotStartedAgainWithoutAWord() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String first = book.all().get(0).id();
    asked.post("firings?" + BURNOUT, Map.of());
    String planned =
        book.all().stream().map(FiringRecord::id).filter(i -> !i.equals(first)).findFirst().get();
    for (String start : List.of("firings?" + BURNOUT, "firing/pressed?id=" + planned)) {
      HttpResponse<String> again = asked.post(start, Map.of("pressed", "now"));
      assertThat(again.statusCode()).isEqualTo(409);
      assertThat(again.body()).contains("Capstan is hot already", "value=\"" + first + "\"");
    }
    assertThat(book.all()).hasSize(2);
    assertThat(asked.settled("")).contains("One kiln is hot.");
    clock.move(Duration.ofMinutes(1));
    assertThat(
            asked
                .post("firing/pressed?id=" + planned, Map.of("pressed", "now", "out", first))
                .statusCode())
        .isEqualTo(302);
    assertThat(book.find(first).orElseThrow().out()).contains(clock.instant());
    assertThat(book.find(planned).orElseThrow().state()).isEqualTo(FiringRecord.State.RUNNING);
  }

  /** Two that run in one kiln, by a book of an earlier version: counted once, and told. */
  @Test
  void twoFiringsInOneKilnAreOneHotKiln() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of());
    asked.post("firings?" + BURNOUT, Map.of());
    book.all().forEach(f -> book.pressed(f, clock.instant(), Optional.empty(), ""));
    assertThat(asked.settled(""))
        .contains("One kiln is hot.", "By the book 2 firings are under way in Capstan");
  }

  /** What the page of a firing says of its forecast is what Now says. */
  @Test
  void whatFitsNoKilnMovesNoForecastOnAnyPage() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String id = book.all().get(0).id();
    clock.move(Duration.ofHours(5));
    asked.post("firing/shown?id=" + id, Map.of("shows", "24"));
    assertThat(asked.settled("")).contains("the forecast is left as it was");
    assertThat(asked.get("firing?id=" + id).body())
        .contains("The forecast is left as it was")
        .doesNotContain("has been moved by what was read");
  }

  /** What the register knows of the slot runs, not what the plan wished for. */
  @Test
  void whatWasKeyedIsKeptApartFromWhatWasPlanned() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of());
    FiringRecord planned = book.all().get(0);
    Schedule plan = planned.planned();
    List<Segment> segments = plan.segments();
    Segment last = segments.get(segments.size() - 1);
    Schedule other =
        plan.withSegments(
            replaced(segments, new Segment(last.ramp(), last.target(), Duration.ofMinutes(60))));
    new SlotBook(store, clock)
        .tell("Capstan", "Gull", new SlotEvent.Keyed(clock.instant(), Role.TECHNICIAN, 3, other));
    asked.post("firing/pressed?id=" + planned.id(), Map.of());

    FiringRecord running = book.find(planned.id()).orElseThrow();
    assertThat(running.keyedOtherwise()).isTrue();
    assertThat(running.runs().segments()).isEqualTo(other.segments());
    assertThat(running.planned().segments()).isEqualTo(segments);
    assertThat(asked.settled("")).contains("The slot held something else than was planned");
    assertThat(asked.get("firing?id=" + planned.id()).body())
        .contains("hold 1:00", "hold 1:30", "that is what ran");
  }

  @Test
  void whatIsWrongIsToldBesideItsFieldAndKept() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String id = book.all().get(0).id();
    HttpResponse<String> word = asked.post("firing/shown?id=" + id, Map.of("shows", "hot"));
    assertThat(word.statusCode()).isEqualTo(422);
    assertThat(word.body())
        .contains("value=\"hot\"", ">Type the number that the display says, in °C, e.g. 612.");
    assertThat(asked.post("firing/shown?id=" + id, Map.of("shows", "6120")).body())
        .contains("between -40 and 1500 °C");
    for (String impossible : new String[] {"-300", "302d", "0x1p7", "NaN", "20 K"}) {
      HttpResponse<String> none = asked.post("firing/shown?id=" + id, Map.of("shows", impossible));
      assertThat(none.statusCode()).isEqualTo(422);
      assertThat(none.body()).contains(">Type the number that the display says, in °C");
    }
    assertThat(asked.post("firing/shown?id=" + id, Map.of("shows", "20", "time", "1405")).body())
        .contains("write it like 14:05");
    assertThat(asked.post("firing/shown?id=" + id, Map.of("shows", "20", "time", "14:05")).body())
        .contains("before start was pressed");
    assertThat(asked.post("firing/note?id=" + id, Map.of("note", " ")).body())
        .contains("write a few words");
    assertThat(asked.post("firing/result?id=" + id, Map.of("outcome", "splendid")).body())
        .contains("Say how it came out");
    assertThat(book.find(id).orElseThrow().all(Happening.SHOWN)).isEmpty();
  }

  /** A letter behind the number is meant: 68 °F is a cold kiln, 68 °C is not. */
  @Test
  void aReadingIsTakenInTheUnitThatIsTyped() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String id = book.all().get(0).id();
    assertThat(asked.get("firing?id=" + id).body()).contains("<span class=\"unit\">°C</span>");
    for (String typed : new String[] {"68F", "68 °F", "20C", "20"}) {
      asked.post("firing/shown?id=" + id, Map.of("shows", typed));
    }
    assertThat(book.find(id).orElseThrow().all(Happening.SHOWN))
        .hasSize(4)
        .allSatisfy(told -> assertThat(told.celsius().orElseThrow()).isEqualTo(20));
  }

  @Test
  void aPictureIsKeptAndShownAndWhatIsNoneIsRefused() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String id = book.all().get(0).id();
    byte[] png = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0};
    assertThat(photo(id, png).statusCode()).isEqualTo(302);
    Matcher shown =
        Pattern.compile("src=\"/(firing/photo/[^\"]+)\"")
            .matcher(asked.get("firing?id=" + id).body());
    assertThat(shown.find()).isTrue();
    HttpResponse<String> picture = asked.get(shown.group(1));
    assertThat(picture.headers().firstValue("Content-Type")).contains("image/png");
    assertThat(photo(id, "<svg/>".getBytes(StandardCharsets.UTF_8)).body())
        .contains("is no picture: choose a JPEG, PNG or WebP");
  }

  @Test
  void aFiringThatIsPutAwayCanBePutBack() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    String id = book.all().get(0).id();
    asked.post("firing/away?id=" + id, Map.of());
    assertThat(asked.settled("")).contains("Nothing is hot.");
    assertThat(asked.get("firing?id=" + id).body()).contains("This firing was put away");
    asked.post("firing/away?id=" + id, Map.of("again", "1"));
    assertThat(asked.settled("")).contains("One kiln is hot.");
  }

  /** Texts of a version that nobody reads any more: told in one sentence, and the pages stand. */
  @Test
  void aFiringWhoseTextsCannotBeReadAnyMoreLeavesThePagesStanding() throws Exception {
    for (boolean pressed : new boolean[] {false, true}) {
      FiringRecord old =
          book.put(
              new FiringEntry(
                  "",
                  "Old one",
                  "enamel",
                  "Capstan",
                  "Gull",
                  3,
                  "work=Old",
                  "kind: enamel",
                  "not: a kiln",
                  "not: a keypad",
                  "not: a schedule",
                  clock.instant(),
                  clock.instant(),
                  List.of(),
                  Optional.empty()));
      if (pressed) {
        assertThat(asked.post("firing/pressed?id=" + old.id(), Map.of()).statusCode())
            .isEqualTo(302);
        assertThat(asked.settled("")).contains("Old one", "Nothing can be told", "Capstan, line 1");
        asked.post("firing/result?id=" + old.id(), Map.of("outcome", "good"));
      }
      assertThat(asked.get("").statusCode()).isEqualTo(200);
      assertThat(asked.get("firings").body()).contains("Old one");
      assertThat(asked.get("firing?id=" + old.id()).body())
          .contains("the planned schedule, line 1");
    }
  }

  /** What the slot held belongs to the press it was told with. */
  @Test
  void aPressThatIsTakenBackTakesWhatWasKeyedWithIt() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of());
    FiringRecord planned = book.all().get(0);
    Segment one = planned.planned().segments().get(0);
    new SlotBook(store, clock)
        .tell(
            "Capstan",
            "Gull",
            new SlotEvent.Keyed(
                clock.instant(), Role.TECHNICIAN, 3, planned.planned().withSegments(List.of(one))));
    asked.post("firing/pressed?id=" + planned.id(), Map.of());
    FiringRecord wrong = book.find(planned.id()).orElseThrow();
    assertThat(wrong.keyed()).isPresent();
    asked.post(
        "firing/back?id=" + planned.id(), Map.of("line", wrong.all(Happening.PRESSED).get(0).id()));
    assertThat(book.find(planned.id()).orElseThrow().keyed()).isEmpty();
  }

  private static List<Segment> replaced(List<Segment> segments, Segment last) {
    Segment[] all = segments.toArray(new Segment[0]);
    all[all.length - 1] = last;
    return Arrays.asList(all);
  }

  private static String figure(String page) {
    return between(page, "<span class=\"figure\">", "</span>");
  }

  private static String between(String page, String before, String after) {
    int from = page.indexOf(before) + before.length();
    return page.substring(from, page.indexOf(after, from));
  }

  private HttpResponse<String> photo(String id, byte[] picture) throws Exception {
    return asked.post(
        "firing/photo?id=" + id, Map.of(), List.of(new AskedBench.SentFile("photo", "p", picture)));
  }
}
