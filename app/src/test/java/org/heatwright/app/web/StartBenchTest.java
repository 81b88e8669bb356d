package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.Map;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.kiln.Chamber;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** From an empty store to a first plan, without a script. */
class StartBenchTest extends BenchCase {

  private static final Map<String, String> KILN =
      Map.of(
          "kiln-name", "Dock",
          "kiln-power", "2600",
          "kiln-volts", "230",
          "kiln-width", "22",
          "kiln-depth", "26",
          "kiln-height", "21",
          "kiln-top", "1100",
          "kiln-door", "front",
          "kiln-wall", "brick");

  @BeforeEach
  void open() {
    Clock clock = Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneId.of("Europe/Lisbon"));
    open(clock);
  }

  @Test
  void anEmptyBenchLeadsToItsBeginning() throws Exception {
    assertThat(asked.settled("")).contains("href=\"/start\"", "Begin here");
    assertThat(asked.get("plan").body()).contains("href=\"/start\"", "Begin here");
    assertThat(asked.get("start").body()).contains("What do you fire?", "href=\"/demo\"");
  }

  /** Whatever is fired: what stands in the small form composes in an ordinary kiln. */
  @ParameterizedTest
  @CsvSource({
    "enamel, tern",
    "burnout, gull",
    "sinter, heron",
    "glass, petrel",
    "heat-treat, later"
  })
  void fourStepsLeadToAFirstPlan(String what, String pad) throws Exception {
    assertThat(step("what", Map.of("what", what))).isEqualTo("/start?step=kiln");
    assertThat(step("kiln", KILN)).isEqualTo("/start?step=keypad");
    assertThat(step("keypad", Map.of("pad", pad))).isEqualTo("/start?step=work");
    assertThat(store.all(Kind.KILN)).as("nothing is on the shelf before the end").isEmpty();
    String plan = step("work", Map.of("work-name", "My first", "zone", "Europe/Lisbon"));
    assertThat(plan).startsWith("/plan?work=My+first&kiln=Dock&keypad=");
    String page = asked.get(plan.substring(1)).body();
    assertThat(page).contains("What the display will say").doesNotContain("No plan");
    assertThat(store.start().answers()).isEmpty();
    Document kiln = store.find(Kind.KILN, "Dock").orElseThrow();
    var read = KilnFile.read(kiln.text(), "Dock");
    assertThat(read.element().ratedWatts()).isEqualTo(2600);
    assertThat(read.limit().celsius()).isEqualTo(1100);
    assertThat(read.timeZone()).contains(ZoneId.of("Europe/Lisbon"));
    assertThat(KilnFile.write(read)).as("written as every kiln is").isEqualTo(kiln.text());
    assertThat(asked.post("card?" + plan.substring(6), "paper=a4").statusCode()).isEqualTo(200);
    if (pad.equals("later")) {
      assertThat(page)
          .contains("Nobody has described this keypad")
          .doesNotContain("class=\"keys\"");
    } else {
      assertThat(page).contains("class=\"keys\"");
    }
  }

  /** By amperes, inches, °F, a round chamber. */
  @Test
  void aPlateIsTakenAsItIsWritten() throws Exception {
    Map<String, String> round = new LinkedHashMap<>(KILN);
    round.put("kiln-power", "15 A");
    round.put("kiln-volts", "240 V");
    round.put("kiln-width", "13 in");
    round.put("kiln-depth", "");
    round.put("kiln-height", "350mm");
    round.put("kiln-top", "2012 °F");
    round.put("kiln-door", "top");
    round.put("kiln-wall", "fibre");
    step("what", Map.of("what", "enamel"));
    step("kiln", round);
    step("keypad", Map.of("pad", "gull"));
    step("work", Map.of("work-name", "E"));
    var kiln = KilnFile.read(store.find(Kind.KILN, "Dock").orElseThrow().text(), "Dock");
    assertThat(kiln.element().ratedWatts()).isEqualTo(3600);
    assertThat(kiln.limit().celsius()).isEqualTo(1100);
    assertThat(kiln.chamber())
        .isInstanceOfSatisfying(
            Chamber.Drum.class, drum -> assertThat(drum.diameterMetres()).isBetween(0.330, 0.3303));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "kiln-power | hot | Power is a number of watts",
        "kiln-volts | 5 | Volts are a number from 20 to 1000",
        "kiln-width | wide | Measure inside, 3 to 400 cm",
        "kiln-top | 80 | The plate or the manual says it",
        "kiln-name | '' | Give it a name"
      })
  void whatIsWrongIsSaidBesideItsFieldAndWhatWasTypedStays(
      String field, String typed, String sentence) throws Exception {
    step("what", Map.of("what", "glass"));
    Map<String, String> wrong = new LinkedHashMap<>(KILN);
    wrong.put(field, typed);
    HttpResponse<String> answer = asked.post("start?step=kiln", AskedBench.form(wrong));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .containsPattern("id=\"" + field + "-error\">" + sentence)
        .containsPattern("name=\"" + field + "\"[^>]*value=\"" + typed + "\"");
    assertThat(asked.get("start").body()).contains("Which kiln?");
  }

  @Test
  void aWorksOwnRulesAreToldBesideTheField() throws Exception {
    step("what", Map.of("what", "enamel"));
    step("kiln", KILN);
    step("keypad", Map.of("pad", "later"));
    HttpResponse<String> answer =
        asked.post(
            "start?step=work", AskedBench.form(Map.of("work-name", "E", "work-sheet", "80")));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).containsPattern("id=\"work-sheet-error\">[^<]*0\\.1");
    assertThat(asked.post("start?step=work", AskedBench.form(Map.of("work-sheet", "thin"))).body())
        .contains("is no number; write it like 0.8");
  }

  /** As a script keeps it, right or wrong; and a later visit goes on there. */
  @Test
  void everyAnswerIsKeptAndALaterVisitGoesOn() throws Exception {
    step("what", Map.of("what", "sinter"));
    assertThat(asked.post("start/keep?step=kiln", "kiln-power=26").statusCode()).isEqualTo(204);
    assertThat(asked.get("start").body()).contains("Which kiln?", "value=\"26\"");
    assertThat(asked.get("start?step=work").headers().firstValue("Location").orElseThrow())
        .isEqualTo("/start?step=kiln");
    assertThat(asked.get("start?step=what").body()).containsPattern("value=\"sinter\" checked");
    assertThat(asked.post("start/afresh", "").headers().firstValue("Location")).contains("/start");
    assertThat(asked.get("start").body())
        .contains("What do you fire?")
        .doesNotContain("Begin afresh");
  }

  /** So are the answers about a keypad that is described. */
  @Test
  void aKeypadThatIsHalfDescribedWaits() throws Exception {
    asked.post("keypad/new", "id=name&answer=By+the+door");
    assertThat(asked.get("keypad/new").body()).contains("By the door", "Begin afresh");
    asked.post("keypad/new", "a-name=By+the+door&afresh=1");
    assertThat(asked.get("keypad/new").body())
        .contains("What do you call this keypad?")
        .doesNotContain("By the door");
  }

  /** The demo has an address and a store of its own, and says so on every page. */
  @Test
  void theDemoStudioIsOneClickAwayAndApart() throws Exception {
    String demo = asked.get("demo").headers().firstValue("Location").orElseThrow();
    assertThat(demo).isNotEqualTo(bench.address().toString()).startsWith("http://127.0.0.1:");
    assertThat(asked.get("demo").headers().firstValue("Location"))
        .as("the same one")
        .contains(demo);
    for (String page : new String[] {"", "plan", "kilns", "help"}) {
      assertThat(new AskedBench(URI.create(demo)).get(page).body())
          .contains("class=\"demo-banner\"", bench.address() + "start");
      assertThat(asked.get(page).body()).doesNotContain("demo-banner");
    }
    assertThat(store.all(Kind.KILN)).isEmpty();
    assertThat(store.all(Kind.WORK)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"kiln", "keypad", "work"})
  void whatIsPutAwayCanBePutBack(String kind) throws Exception {
    fourStepsLeadToAFirstPlan("enamel", "gull");
    Document thing = store.all(Kind.valueOf(kind.toUpperCase(java.util.Locale.ROOT))).get(0);
    assertThat(asked.get("shelf").body()).contains("Put away: " + thing.name());
    String undo =
        asked
            .post("shelf/away", "what=" + kind + "&id=" + thing.id())
            .headers()
            .firstValue("Location")
            .orElseThrow();
    assertThat(asked.get(undo.substring(1)).body())
        .contains("was put away.", "Put it back", "Put back: " + thing.name());
    assertThat(asked.post("shelf/back", "id=" + thing.id()).statusCode()).isEqualTo(302);
    assertThat(asked.get("shelf").body()).contains("Put away: " + thing.name());
    assertThat(asked.post("shelf/back", "id=" + thing.id()).statusCode()).isEqualTo(404);
  }

  /** The book's own putting away is listed with the shelf's. */
  @Test
  void aFiringThatWasPutAwayIsListedToo() throws Exception {
    fourStepsLeadToAFirstPlan("enamel", "gull");
    asked.post("firings?work=My+first&kiln=Dock&keypad=Digit+keys", "");
    String id = store.firings().all().get(0).id();
    asked.post("firing/away?id=" + id, "");
    assertThat(store.firings().all()).isEmpty();
    assertThat(asked.get("shelf").body()).contains("Put back: My first, firing");
    asked.post("shelf/back", "id=" + id);
    assertThat(store.firings().all()).hasSize(1);
  }

  // ---- helpers

  /** Where a step leads. */
  private String step(String step, Map<String, String> answers) throws Exception {
    HttpResponse<String> answer = asked.post("start?step=" + step, AskedBench.form(answers));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
    return answer.headers().firstValue("Location").orElseThrow();
  }
}
