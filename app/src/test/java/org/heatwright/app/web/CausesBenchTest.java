package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.MovingClock;
import org.heatwright.app.slots.SlotBook;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.forecast.Forecaster;
import org.heatwright.keypad.register.Role;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.kiln.FiringConditions;
import org.heatwright.kiln.FiringConditions.Disturbance;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Composer;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * From a fault that was told to what may be behind it, on a firing's page and by five questions.
 */
class CausesBenchTest {

  private static final Instant AFTERNOON = Instant.parse("2026-12-02T15:00:00Z");
  private static final String BURNOUT =
      "work=Harbour+burnout&kiln=Capstan&keypad=Gull&slot=3&by=start";

  private static MovingClock clock;
  private static Store store;
  private static Bench bench;
  private static AskedBench asked;
  private static FiringBook book;

  @BeforeAll
  static void open() {
    clock = new MovingClock(AFTERNOON, ZoneId.of("Europe/Lisbon"));
    store = Store.temporary(clock);
    DemoStudio.fill(store);
    bench = Bench.start(new BenchSettings(store, clock, OptionalInt.of(0)));
    asked = new AskedBench(bench);
    book = new FiringBook(store, clock);
  }

  /** Each on a day of its own. */
  @BeforeEach
  void another() {
    clock.move(Duration.ofDays(3));
  }

  @AfterAll
  static void close() {
    bench.close();
    store.close();
  }

  /** While it runs, the curve is what is wanted; the result comes after it. */
  @Test
  void theResultIsAskedForAfterTheCurveWhileTheFiringRuns() throws Exception {
    String id = started();
    String running = asked.get("firing?id=" + id).body();
    assertThat(running.indexOf("id=\"result\"")).isGreaterThan(running.indexOf("id=\"curve\""));
    assertThat(running).doesNotContain("What may be behind it");
    asked.post("firing/out?id=" + id, Map.of("from", "firing", "why", ""));
    asked.post("firing/result?id=" + id, Map.of("outcome", "good"));
    String done = asked.get("firing?id=" + id).body();
    assertThat(done.indexOf("id=\"result\"")).isBetween(0, done.indexOf("id=\"curve\""));
    assertThat(done).doesNotContain("What may be behind it");
  }

  @Test
  void aFaultLeadsToCausesATestEachAndAPlanWithOneChange() throws Exception {
    String id = started();
    clock.move(Duration.ofHours(20));
    asked.post("firing/result?id=" + id, Map.of("outcome", "carbon"));
    String page = asked.get("firing?id=" + id).body();
    assertThat(page)
        .contains("What may be behind it", "One change to try", "Test, a look", "Break a mould")
        .contains("By the plan and the slot alone", "It is only possible yet");
    String plan = link(page, "href=\"(/plan[?][^\"]+)\">Open the plan with this change");
    FiringRecord firing = book.find(id).orElseThrow();
    long planned = firing.planned().segments().get(2).hold().toMinutes();
    long longer = 5 * (long) Math.ceil(planned * 1.25 / 5);
    assertThat(plan).contains("hold3=%d%%3A%02d".formatted(longer / 60, longer % 60));
    assertThat(asked.get(plan).body())
        .contains("value=\"%d:%02d\"".formatted(longer / 60, longer % 60));
    // It is the plan that changes, in the address alone: nothing was kept.
    assertThat(book.find(id).orElseThrow().planned()).isEqualTo(firing.planned());

    String yes = link(page, "href=\"(/ask[?]firing=[^\"]+=yes)\"");
    String told = asked.get(yes).body();
    assertThat(told).contains("You say that", "likeliest first");
    assertThat(told).contains("checked> yes");
  }

  /** A log of that day shows that the heat was away: that stands first, and keying is cleared. */
  @Test
  void aMainsCutInTheLogOfThatDayStandsFirst() throws Exception {
    String id = started();
    clock.move(Duration.ofHours(20));
    asked.post("firing/result?id=" + id, Map.of("outcome", "carbon"));
    FiringRecord firing = book.find(id).orElseThrow();
    log(firing, 9.5 * 3600, 5400);
    long before = System.nanoTime();
    String page = asked.get("firing?id=" + id).body();
    System.out.printf(
        "A firing's page while its log is read: %.2f s%n", (System.nanoTime() - before) / 1e9);
    if (page.contains("is still being read")) { // else it was quick
      assertThat(page)
          .contains("The log “night” of that day is still being read", "Break a mould")
          .doesNotContain("the display fell by");
    }
    for (int looks = 0; page.contains("is still being read") && looks < 300; looks++) {
      Thread.sleep(100);
      page = asked.get("firing?id=" + id).body();
    }
    assertThat(page).doesNotContain("is still being read");
    String top = page.substring(page.indexOf("class=\"causes\""));
    assertThat(top.substring(0, top.indexOf("</li>")))
        .contains(">likely<", "The heat was away for a while", "the display fell by");
    assertThat(page).contains("What the record contradicts", "the log “night”");
  }

  private static void log(FiringRecord firing, double cutSeconds, double lengthSeconds) {
    ForecastTrace trace =
        Forecaster.forecastDisplay(
                ForecastRequest.of(
                        firing.runs().withStartDelay(Duration.ZERO),
                        firing.kiln(),
                        Composer.compose(firing.work(), firing.kiln(), Optional.of(firing.keypad()))
                            .charge())
                    .withDraws(1)
                    .withConditions(
                        FiringConditions.usual()
                            .with(
                                new Disturbance(
                                    Disturbance.Kind.MAINS_OFF, cutSeconds, lengthSeconds))))
            .trace();
    Instant start = firing.pressed().orElseThrow().plus(firing.runs().startDelay());
    List<String> rows = new ArrayList<>();
    rows.add("time,chamber_c");
    double[] seconds = trace.seconds();
    for (int second = 0; second <= seconds[seconds.length - 1]; second += 60) {
      rows.add(
          "%s,%.0f"
              .formatted(
                  DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                      start.plusSeconds(second).atZone(ZoneId.of("Europe/Lisbon"))),
                  trace.displayCelsiusAt(second).median()));
    }
    store.keepLog(
        firing.entry().kiln(),
        "night",
        firing.pressed().orElseThrow().atZone(ZoneId.of("Europe/Lisbon")).toLocalDate(),
        String.join("\n", rows) + "\n",
        ScheduleFile.write(firing.runs()),
        "");
  }

  /** What was keyed otherwise than planned is known from the slot, and named before all else. */
  @Test
  void aSlotThatHeldTheOtherUnitStandsFirst() throws Exception {
    asked.post("firings?" + BURNOUT.replace("slot=3", "slot=5"), Map.of());
    FiringRecord planned = book.all().get(0);
    Schedule plan = planned.planned();
    Schedule slipped =
        plan.withSegments(
            plan.segments().stream()
                .map(
                    s ->
                        s.withTarget(
                            org.heatwright.units.TemperatureUnit.FAHRENHEIT.temperature(
                                s.target().celsius())))
                .toList());
    new SlotBook(store, clock)
        .tell("Capstan", "Gull", new SlotEvent.Keyed(clock.instant(), Role.TECHNICIAN, 5, slipped));
    asked.post("firing/pressed?id=" + planned.id(), Map.of());
    clock.move(Duration.ofHours(20));
    asked.post("firing/result?id=" + planned.id(), Map.of("outcome", "carbon"));
    String page = asked.get("firing?id=" + planned.id()).body();
    assertThat(page).doesNotContain("is still being read");
    String top = page.substring(page.indexOf("class=\"causes\""));
    assertThat(top.substring(0, top.indexOf("</li>\n")))
        .contains("Numbers meant in °C stood in a keypad that was in °F", ">likely<");
    assertThat(page)
        .contains("change nothing else")
        .doesNotContain("Open the plan with this change");
  }

  @Test
  void theLastFiringsOfThisKindStandBesideItWithWhatDiffers() throws Exception {
    String first = started();
    clock.move(Duration.ofHours(20));
    asked.post("firing/out?id=" + first, Map.of());
    asked.post("firing/result?id=" + first, Map.of("outcome", "good"));
    clock.move(Duration.ofHours(28));
    asked.post(
        "firings?" + BURNOUT + "&of=Harbour+burnout@Capstan/4C&hold3=1:00",
        Map.of("pressed", "now"));
    String second = book.all().get(0).id();
    clock.move(Duration.ofHours(20));
    asked.post("firing/result?id=" + second, Map.of("outcome", "carbon"));
    String page = asked.get("firing?id=" + second).body();
    assertThat(page)
        .contains("The last firings of this kind of work", "this one", ">hold at the top, planned<")
        .contains("The last firings of this work in Capstan");
    String row = page.substring(page.indexOf(">hold at the top, planned<"));
    assertThat(row.substring(0, row.indexOf("</tr>"))).contains("class=\"differs\"");
    String same = page.substring(page.indexOf(">top, planned<"));
    assertThat(same.substring(0, same.indexOf("</tr>"))).doesNotContain("differs");

    // In another kiln there has been none: those of other kilns are shown, and said to be.
    clock.move(Duration.ofHours(28));
    asked.post("firings?" + BURNOUT.replace("Capstan", "Anchor"), Map.of("pressed", "now"));
    String third = book.all().get(0).id();
    clock.move(Duration.ofHours(20));
    asked.post("firing/result?id=" + third, Map.of("outcome", "porous"));
    assertThat(asked.get("firing?id=" + third).body()).contains("Anchor has had none before");
  }

  @Test
  void fiveQuestionsStandWithoutAnyRecordAndEveryAnswerMayStayOpen() throws Exception {
    assertThat(asked.get("help").body()).contains("href=\"/ask\"");
    assertThat(asked.get("firings").body()).contains("href=\"/ask\"");
    String empty = asked.get("ask").body();
    assertThat(empty).contains("Five questions", "5. What should it have been?");
    String told = asked.get("ask?came=glass/over-fired&firing=&high=&c.reads-low=").body();
    assertThat(told)
        .contains("Too far: ", "likeliest first", "Not known, and it would change the order");
    // One look at the cold display settles the unit.
    String unit =
        asked.get("ask?came=heat-treat/coarse-grain&now=21&meant=F&top=572&high=570").body();
    String top = unit.substring(unit.indexOf("class=\"causes\""));
    assertThat(top.substring(0, top.indexOf("</li>\n")))
        .contains("Numbers meant in °F stood in a keypad that was in °C")
        .contains("as the cold kiln's 21 shows");
    assertThat(asked.get("ask?came=kiln/stays-cold&c.clicks=yes").body())
        .contains("The controller calls for heat and none comes", "licensed person");
  }

  @Test
  void fiveQuestionsEndInACheckedPlanWhereOneIsWanted() throws Exception {
    assertThat(asked.get("ask?want=card").body()).contains("For a card choose the work");
    String clean = asked.get("ask?want=card&work=Copper+leaves+1&kiln=Buoy&keypad=Tern").body();
    assertThat(clean).containsPattern("Checked: nothing says stop or warn|something to settle");
    String address = link(clean, "href=\"(/plan[?][^\"]+)\">Open the plan<");
    // What the plan's own page finds is what was said of it here.
    String plan = asked.get(address).body();
    String findings =
        plan.substring(plan.indexOf("id=\"findings\""), plan.indexOf("id=\"keying\""));
    boolean found = Pattern.compile("class=\"finding (stop|warn)\"").matcher(findings).find();
    assertThat(clean.contains("A checked plan")).isEqualTo(!found);
  }

  @Test
  void whatCannotBeTakenIsToldBesideItsField() throws Exception {
    String page =
        asked.get("ask?came=glass/nonsense&high=hot&top=99999&hold=3&firing=none&kiln=None").body();
    assertThat(page)
        .contains("choose from the list", "There is no such firing in the book")
        .contains("Write the number alone", "That is not on the shelf");
    assertThat(asked.get("ask?came=%3Cscript%3E&c.nothing=yes&when=%3Cb%3E").body())
        .doesNotContain("<b>", "<script>");
  }

  private static String started() throws Exception {
    asked.post("firings?" + BURNOUT, Map.of("pressed", "now"));
    return book.all().get(0).id();
  }

  private static String link(String page, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(page);
    assertThat(matcher.find()).as(pattern).isTrue();
    return matcher.group(1).substring(1).replace("&amp;", "&");
  }
}
