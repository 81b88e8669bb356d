package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.Watch;
import org.heatwright.app.firings.WatchWords;
import org.heatwright.app.languages.Language;
import org.heatwright.app.store.Kind;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.forecast.SegmentForecast;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A plan in a kiln that is too weak for it: when a simulation gave up is no time. */
class EndlessBenchTest extends BenchCase {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T12:00:00Z"), ZoneOffset.UTC);

  @BeforeEach
  void open() {
    openStudio(CLOCK);
    String anchor = store.find(Kind.KILN, "Anchor").orElseThrow().text();
    for (int watts : new int[] {300, 700}) {
      String name = "Weak " + watts;
      store.keep(
          Kind.KILN,
          name,
          anchor
              .replaceFirst("name: .*", "name: " + name)
              .replaceFirst("rated-w: \\d+", "rated-w: " + watts));
    }
  }

  private static String plan(int watts) {
    return "plan?work=Harbour+burnout&kiln=Weak+%d&keypad=Gull&by=start".formatted(watts);
  }

  @ParameterizedTest
  @CsvSource({
    "300, never ends, in every case, It never ends: the kiln does not reach a target",
    "700, may never end, of 100 cases, No end can be promised: in"
  })
  void thePlanHasNoEndThatIsNone(int watts, String end, String cases, String sure)
      throws Exception {
    assertThat(asked.settled(plan(watts)).replaceAll("\\s+", " "))
        .contains("Not sure to be ready; the program", ">" + end + "<", cases, sure)
        .contains("; may never move on.", "The program may never end: somebody must come.")
        .doesNotContain("the program ends", "The elements go off", "land in this window");
  }

  /** Asked to be ready by a time: no start is counted back from a time that is none. */
  @ParameterizedTest
  @CsvSource({
    "300, in hardly any likely case., in kaum einem wahrscheinlichen Fall dorthin.",
    "700, of 100 likely cases only., von 100 wahrscheinlichen Fällen dorthin."
  })
  void noStartIsReckonedForAReadyBy(int watts, String cases, String german) throws Exception {
    String address = plan(watts).replace("by=start", "by=ready&at=2026-12-04T10:00");
    assertThat(asked.settled(address).replaceAll("\\s+", " "))
        .contains("No start can be reckoned for ready by 10:00 Friday 4 December: the kiln")
        .contains(cases, "Do not fire this yet")
        .contains("The times here are for a start without a delay")
        .contains("value=\"2026-12-02T12:15\"");
    assertThat(asked.send(asked.request(address).header("Cookie", "language=de")).body())
        .contains("lässt sich kein Start berechnen: Der Ofen kommt", german)
        .contains("Die Zeiten hier gelten für einen Start ohne Verzögerung")
        .doesNotContain("No start", "The times here");
  }

  private Watch watched(int watts) {
    Forecasts forecasts = new Forecasts();
    Map<String, String> choices = new HashMap<>(DemoStudio.OPENING);
    choices.put("work", "Harbour burnout");
    choices.put("kiln", "Weak " + watts);
    choices.put("keypad", "Gull");
    choices.put("by", "start");
    Firing firing =
        new FiringPlanner(store, CLOCK, forecasts)
            .plan(Choices.of(choices), ForecastRequest.USUAL_DRAWS)
            .firing()
            .orElseThrow();
    FiringDesk desk = new FiringDesk(store, CLOCK, new SlotsDesk(store, CLOCK), forecasts);
    desk.put(firing, true);
    return desk.watch(new FiringBook(store, CLOCK).all().get(0));
  }

  /** Now, too, has no time for what most kilns never do. */
  @ParameterizedTest
  @ValueSource(ints = {300, 700})
  void nowTellsNoTimeAtWhichASimulationGaveUp(int watts) {
    Watch watch = watched(watts);
    List<SegmentForecast> segments = watch.forecast().segments();
    double last = segments.get(segments.size() - 1).reachedShare();
    assertThat(last).isBetween(watts == 300 ? 0 : 0.06, watts == 300 ? 0.05 : 0.94);
    double begins = 0;
    for (SegmentForecast segment : segments) {
      double share = segment.reachedShare();
      if (!SegmentForecast.hasBand(share)) {
        String now = at(watch, begins + 60).whatNow();
        assertThat(now)
            .startsWith("Segment %d of ".formatted(segment.index()))
            .contains("on the way to ")
            .endsWith(
                SegmentForecast.hasMedian(share)
                    ? "; it may never get there."
                    : "; most likely it never gets there.");
        assertThat(now.contains(", there ")).isEqualTo(SegmentForecast.hasLow(share));
        assertThat(now.contains(" at the earliest; ")).isEqualTo(SegmentForecast.hasLow(share));
      }
      if (!SegmentForecast.hasMedian(share)) {
        break; // the program stays in it
      }
      begins = segment.endSeconds().median();
    }
    WatchWords late = at(watch, 10 * 86_400);
    assertThat(late.whatNow())
        .matches(
            SegmentForecast.hasMedian(last)
                ? "The program should have ended, if the kiln got there: look at the kiln\\."
                : "Segment \\d of .*; most likely it never gets there\\.");
    assertThat(late.ready()).isEmpty();
    assertThat(late.resultIsDue()).isEqualTo(SegmentForecast.hasLow(last));
  }

  private static WatchWords at(Watch watch, double seconds) {
    return new WatchWords(watch, watch.start().toInstant().plusSeconds((long) seconds));
  }

  @Test
  void itIsSaidInGermanToo() throws Exception {
    String address = plan(700);
    asked.settled(address);
    String page = asked.send(asked.request(address).header("Cookie", "language=de")).body();
    assertThat(page)
        .contains("lang=\"" + Language.GERMAN.tag() + "\"")
        .contains("endet vielleicht nie", "von 100 Fällen", "Ein Ende lässt sich nicht versprechen")
        .contains("; vielleicht nie weiter.", "Das Programm endet vielleicht nie")
        .doesNotContain("never end");
  }
}
