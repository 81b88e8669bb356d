package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.firings.MovingClock;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Pieces in and out of the hot kiln, as the bench answers about them. */
class TimerBenchTest extends BenchCase {

  private static final Instant AFTERNOON = Instant.parse("2026-12-02T15:00:00Z");
  private static final String EVENING =
      "work=Evening+enamel&kiln=Anchor&keypad=Gull&slot=3&by=start";

  private MovingClock clock;
  private FiringBook book;

  @BeforeEach
  void open() {
    clock = new MovingClock(AFTERNOON, ZoneId.of("Europe/Lisbon"));
    openStudio(clock);
    book = new FiringBook(store, clock);
  }

  /** The timer says what the plan's own words say: both are read from one outlook. */
  @Test
  void itsMomentsAreThoseOfThePlan() throws Exception {
    JsonNode data = data(asked.get("timer?" + EVENING).body());
    JsonNode stages = data.path("stages");
    assertThat(stages.path(0).path("fromSeconds").asDouble()).isZero();
    double look = stages.path(1).path("fromSeconds").asDouble();
    // The plan rounds to 5 s below three minutes, else to 15.
    String plan = asked.get("plan?" + EVENING).body();
    String told = plan.replaceAll("(?s).*Look from ([0-9a-z ]+) on, then every.*", "$1");
    assertThat(told).endsWith(" s").doesNotContain("min");
    assertThat(look).isBetween(seconds(told) - 3, seconds(told) + 3);
    // The curve rises from the room to near the kiln's heat, its band in order.
    JsonNode curve = data.path("curve");
    int rows = curve.path("seconds").size();
    assertThat(curve.path("median").path(0).asDouble()).isBetween(15.0, 25.0);
    assertThat(curve.path("median").path(rows - 1).asDouble()).isBetween(700.0, 850.0);
    for (int i = 0; i < rows; i++) {
      assertThat(curve.path("low").path(i).asDouble())
          .isLessThanOrEqualTo(curve.path("high").path(i).asDouble());
    }
    // Ten seconds before the first look there is a warning, then two sounds more at each look.
    assertThat(data.path("sounds").path(0).path("kind").asText()).isEqualTo("soon");
    assertThat(data.path("sounds").path(0).path("atSeconds").asDouble()).isEqualTo(look - 10);
    assertThat(plan).contains("href=\"/timer?plan=");
  }

  /** A cooler kiln needs longer; a heat that is none is told so, and the plan's own stands. */
  @Test
  void whatTheDisplaySaysBeforeTheDoorCounts() throws Exception {
    double usual = look("timer?" + EVENING);
    assertThat(look("timer?" + EVENING + "&heat=760")).isGreaterThan(usual + 3);
    assertThat(look("timer?" + EVENING + "&heat=840+%C2%B0C")).isLessThan(usual - 3);
    assertThat(asked.get("timer?" + EVENING + "&heat=80").body())
        .contains("type what the display says before the door opens");
    assertThat(look("timer?" + EVENING + "&heat=80")).isEqualTo(usual);
  }

  @Test
  void aPieceIsToldOnceAndCanBeTakenBack() throws Exception {
    asked.post("firings?" + EVENING, "pressed=now");
    FiringRecord firing = book.all().get(0);
    assertThat(asked.settled("")).contains("href=\"/timer?firing=" + firing.id());
    clock.move(Duration.ofHours(3));
    long shut = clock.millis() - 100_000;
    String address = "timer/piece?firing=" + firing.id();
    assertThat(asked.post(address, "at=" + shut + "&seconds=95").statusCode()).isEqualTo(200);
    // The answer was lost on the way: the same again changes nothing.
    assertThat(asked.post(address, "at=" + shut + "&seconds=95").body()).containsOnlyOnce("\"at\"");
    assertThat(pieces(firing)).isEqualTo(1);
    assertThat(asked.get("firing?id=" + firing.id()).body())
        .contains("A piece was in the kiln for", "95 seconds");
    JsonNode kept = data(asked.get("timer?firing=" + firing.id()).body()).path("pieces");
    assertThat(kept.path(0).path("at").asLong()).isEqualTo(shut);
    asked.post(address, "at=" + shut + "&seconds=95&back=1");
    assertThat(pieces(firing)).isZero();
    asked.post(address, "at=" + shut + "&seconds=95");
    assertThat(pieces(firing)).isEqualTo(1);

    assertThat(asked.post(address, "at=" + shut + "&seconds=soon").body())
        .contains("no whole number");
    assertThat(asked.post(address, "at=1&seconds=90").body()).contains("before start was pressed");
    assertThat(asked.post(address, "at=" + (shut + 1) + "&seconds=9000").body())
        .contains("a piece is in for 1 to 7200 s");
    assertThat(asked.post("timer/piece?firing=none", "at=1&seconds=9").statusCode()).isEqualTo(404);
    assertThat(pieces(firing)).isEqualTo(1);
  }

  @Test
  void mouldsHaveNoPieceTimer() throws Exception {
    HttpResponse<String> answer =
        asked.get("timer?work=Harbour+burnout&kiln=Capstan&keypad=Gull&slot=3&by=start");
    assertThat(answer.statusCode()).isEqualTo(400);
    assertThat(answer.body()).contains("for enamel");
  }

  private int pieces(FiringRecord firing) {
    return book.find(firing.id()).orElseThrow().all(Happening.PIECE).size();
  }

  private double look(String address) throws Exception {
    return data(asked.get(address).body()).path("stages").path(1).path("fromSeconds").asDouble();
  }

  private static double seconds(String told) {
    return Double.parseDouble(told.replace(" s", ""));
  }

  private static JsonNode data(String page) throws Exception {
    String from = "id=\"timer-data\">";
    int start = page.indexOf(from) + from.length();
    return new ObjectMapper().readTree(page.substring(start, page.indexOf("</script>", start)));
  }
}
