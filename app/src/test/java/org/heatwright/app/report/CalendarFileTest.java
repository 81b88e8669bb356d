package org.heatwright.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.heatwright.forecast.Forecast;
import org.heatwright.forecast.SegmentForecast;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.Schedule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The independent parser is biweekly. */
class CalendarFileTest {

  private static final Instant STAMP = Instant.parse("2026-12-02T16:00:00Z");
  private static final Instant START = Instant.parse("2026-12-03T11:36:00Z");

  private static CalendarFile.Event event(String summary, String description) {
    return new CalendarFile.Event(
        "one@heatwright",
        summary,
        description,
        START,
        START.plusSeconds(900),
        Optional.of(Duration.ofMinutes(14)));
  }

  private static VEvent parsed(String text) {
    ICalendar calendar = Biweekly.parse(text).first();
    assertThat(calendar.validate(biweekly.ICalVersion.V2_0).getWarnings()).isEmpty();
    assertThat(calendar.getEvents()).hasSize(1);
    return calendar.getEvents().get(0);
  }

  @Test
  void anIndependentParserReadsBackWhatWasWritten() {
    VEvent read = parsed(CalendarFile.write(List.of(event("Ready", "Moulds")), STAMP));
    assertThat(read.getUid().getValue()).isEqualTo("one@heatwright");
    assertThat(read.getSummary().getValue()).isEqualTo("Ready");
    assertThat(read.getDescription().getValue()).isEqualTo("Moulds");
    assertThat(read.getDateStart().getValue().toInstant()).isEqualTo(START);
    assertThat(read.getDateEnd().getValue().toInstant()).isEqualTo(START.plusSeconds(900));
    assertThat(read.getDateTimeStamp().getValue().toInstant()).isEqualTo(STAMP);
    assertThat(read.getAlarms()).hasSize(1);
    assertThat(read.getAlarms().get(0).getTrigger().getDuration().toMillis())
        .isEqualTo(-14 * 60_000L);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "commas, semicolons; and back\\slashes",
        "two\nlines, and a third\r\nhere",
        "750 °C für Ätzkupfer: größer als gedacht, 炉の温度, 🔥 heiß",
        "\\n is not a new line",
        "",
      })
  void textSurvivesTheParser(String text) {
    VEvent read = parsed(CalendarFile.write(List.of(event("s " + text, text)), STAMP));
    String expected = text.replace("\r\n", "\n");
    assertThat(read.getSummary().getValue()).isEqualTo("s " + expected);
    assertThat(read.getDescription().getValue()).isEqualTo(expected);
  }

  /** Seeded: long texts of one to four octets a character, with all that must be escaped. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void noLineIsLongerThan75OctetsAndNoCharacterIsTorn(long seed) {
    Random random = new Random(seed);
    int[] alphabet = {'a', ' ', ',', ';', '\\', '\n', '°', 'é', '炉', 0x1F525};
    StringBuilder text = new StringBuilder("x");
    for (int i = 0; i < 40 + random.nextInt(400); i++) {
      text.appendCodePoint(alphabet[random.nextInt(alphabet.length)]);
    }
    text.append('x');
    String written = CalendarFile.write(List.of(event(text.toString(), "d")), STAMP);
    assertThat(written).endsWith("\r\n");
    assertThat(written.replace("\r\n", "")).doesNotContain("\r").doesNotContain("\n");
    for (String line : written.split("\r\n")) {
      byte[] octets = line.getBytes(StandardCharsets.UTF_8);
      assertThat(octets.length).isLessThanOrEqualTo(75);
      assertThat(new String(octets, StandardCharsets.UTF_8)).isEqualTo(line);
    }
    assertThat(parsed(written).getSummary().getValue()).isEqualTo(text.toString());
  }

  @Test
  void aCardGivesReadyAndActNowAndTheActRingsForTheEarlyEnd() {
    Card card = TestFirings.burnoutCard();
    List<CalendarFile.Event> events = CalendarFile.events(card, "firing-7@heatwright");
    assertThat(events)
        .extracting(CalendarFile.Event::uid)
        .containsExactly(
            "firing-7-start@heatwright", "firing-7-ready@heatwright", "firing-7-act-1@heatwright");
    CalendarFile.Event start = events.get(0);
    CalendarFile.Event ready = events.get(1);
    CalendarFile.Event act = events.get(2);
    assertThat(start.start()).isEqualTo(card.timing().start().orElseThrow().toInstant());
    assertThat(ready.start()).isEqualTo(Instant.parse("2026-12-03T11:36:00Z"));
    assertThat(ready.description()).contains("Thu 3 Dec 11:36").contains("never starts heat");
    assertThat(act.summary()).startsWith("Act now: pour the first mould");
    assertThat(act.start()).isEqualTo(Instant.parse("2026-12-03T12:06:00Z"));
    Card.Act pour = card.moments().stream().filter(Card.Act::actNow).findFirst().orElseThrow();
    double early = pour.seconds().median() - pour.seconds().low();
    assertThat(act.alarm().orElseThrow().toSeconds())
        .isGreaterThanOrEqualTo((long) Math.max(600, early));
    ICalendar calendar = Biweekly.parse(CalendarFile.write(events, STAMP)).first();
    assertThat(calendar.getEvents()).hasSize(3);
  }

  /** The same burnout in a kiln that reaches the last target in so many cases only. */
  private static Card weak(double share, AtEnd atEnd) {
    Schedule burnout = TestFirings.burnout();
    Schedule schedule =
        new Schedule(
            burnout.name(), burnout.unit(), burnout.segments(), burnout.startDelay(), atEnd);
    Kiln kiln = TestFirings.kiln("Capstan");
    Forecast forecast = TestFirings.forecast(schedule, kiln, true);
    List<SegmentForecast> segments = new ArrayList<>(forecast.segments());
    SegmentForecast last = segments.remove(segments.size() - 1);
    segments.add(
        new SegmentForecast(
            last.index(),
            last.reachedSeconds(),
            Optional.empty(),
            last.endSeconds(),
            last.saturatedSeconds(),
            last.behindSeconds(),
            share));
    return CardBuilder.of(
            schedule,
            kiln,
            new Forecast(
                forecast.schedule(),
                forecast.kiln(),
                segments,
                forecast.endSeconds(),
                forecast.energyKilowattHours(),
                forecast.meanWatts(),
                forecast.work(),
                forecast.trace(),
                forecast.inside(),
                forecast.pieces()))
        .composition(TestFirings.composition(schedule), List.of())
        .start(TestFirings.EVENING, List.of())
        .build();
  }

  /** A calendar is read where no forecast stands beside it. */
  @ParameterizedTest
  @CsvSource({
    "0.8, may never end: in 20 of 100 cases",
    "0.3, may never end: in 70 of 100 cases",
    "0, never ends: in every case"
  })
  void aProgramThatMayNeverEndIsToldInEveryEvent(double share, String told) {
    for (AtEnd atEnd : AtEnd.values()) {
      assertThat(CalendarFile.events(weak(share, atEnd), "a@b"))
          .hasSize(3)
          .allSatisfy(
              event ->
                  assertThat(event.description())
                      .contains("This program " + told)
                      .contains("Somebody must be there to switch it off.")
                      .doesNotContain("nine in ten"));
    }
    assertThat(CalendarFile.events(weak(0.95, AtEnd.OFF), "a@b"))
        .allSatisfy(event -> assertThat(event.description()).doesNotContain("never end"));
  }

  @Test
  void whereMostCasesNeverEndNoEventEndsWithTheProgram() {
    for (AtEnd atEnd : AtEnd.values()) {
      for (double share : new double[] {0, 0.3}) {
        Card card = weak(share, atEnd);
        assertThat(CalendarFile.events(card, "a@b"))
            .allSatisfy(
                event -> assertThat(event.end()).isEqualTo(event.start().plusSeconds(15 * 60)));
      }
    }
    String never = CalendarFile.events(weak(0, AtEnd.OFF), "a@b").get(1).description();
    assertThat(never).contains("), kept hot until a person ends it.");
    String some = CalendarFile.events(weak(0.3, AtEnd.OFF), "a@b").get(1).description();
    assertThat(some).containsPattern("until Thu 3 Dec \\d\\d:\\d\\d at the earliest\\.");
  }

  @Test
  void theSameCardGivesTheSameText() {
    String once = CalendarFile.write(CalendarFile.events(TestFirings.burnoutCard(), "a@b"), STAMP);
    String again = CalendarFile.write(CalendarFile.events(TestFirings.burnoutCard(), "a@b"), STAMP);
    assertThat(once).isEqualTo(again);
  }

  @Test
  void withoutAStartThereAreNoEvents() {
    Card card = TestFirings.bareCard(TestFirings.burnout());
    assertThat(CalendarFile.events(card, "a@b")).isEmpty();
  }

  @Test
  void anEventMustNotEndBeforeItStarts() {
    assertThatThrownBy(
            () ->
                new CalendarFile.Event(
                    "u", "s", "d", START, START.minusSeconds(1), Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("must not end before it starts");
  }
}
