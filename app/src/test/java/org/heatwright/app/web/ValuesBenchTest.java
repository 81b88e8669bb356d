package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import org.heatwright.app.files.OwnValues;
import org.heatwright.app.files.ValuesFile;
import org.heatwright.app.files.ValuesOf;
import org.heatwright.app.store.Kind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A person's own values on the bench: typed, changed, put into works and taken out again. */
class ValuesBenchTest extends BenchCase {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T12:00:00Z"), ZoneOffset.UTC);

  @BeforeEach
  void open() {
    openStudio(CLOCK);
  }

  private HttpResponse<String> keep(String... fields) throws Exception {
    Map<String, String> form = new LinkedHashMap<>();
    for (int i = 0; i < fields.length; i += 2) {
      form.put(fields[i], fields[i + 1]);
    }
    return asked.post("materials/own", form);
  }

  private OwnValues kept(String name) {
    return ValuesFile.read(store.find(Kind.VALUES, name).orElseThrow().text(), name);
  }

  private String work(String name) {
    return store.find(Kind.WORK, name).orElseThrow().text();
  }

  @Test
  void valuesAreTypedInTheUnitOfTheFormAndKeptInCelsius() throws Exception {
    assertThat(asked.get("materials/own?of=glass&unit=F").body())
        .contains("Annealing point <span translate=\"no\">(°F)</span>", "name=\"expansion\"");

    HttpResponse<String> answer =
        keep(
            "of", "glass",
            "unit", "F",
            "name", "Bottle & jar",
            "source", "two test strips",
            "glass", "unknown",
            "anneal-celsius", "1000",
            "anneal-soak", "1:15",
            "data-sheet.fastest-rise-k-per-h", "180");

    assertThat(answer.statusCode()).isEqualTo(302);
    assertThat(answer.headers().firstValue("Location"))
        .contains("/materials?unit=F&kept=Bottle+%26+jar#mine");
    assertThat(kept("Bottle & jar"))
        .isEqualTo(
            new OwnValues(
                ValuesOf.GLASS,
                "two test strips",
                Map.of(
                    "glass", "unknown",
                    "anneal-celsius", "537.8",
                    "anneal-soak", "\"1:15\"",
                    "data-sheet.fastest-rise-k-per-h", "100")));
    assertThat(asked.get("materials?unit=F&kept=Bottle+%26+jar").body())
        .contains("Bottle &amp; jar", "1000 °F", "180 °F/h", "1 h 15 min", "two test strips");
    assertThat(asked.get("materials/own?name=Bottle+%26+jar&unit=F").body())
        .contains("value=\"1000\"", "value=\"180\"", "value=\"1:15\"");
  }

  @Test
  void whatIsWrongIsSaidBesideItsField() throws Exception {
    HttpResponse<String> answer =
        keep("of", "enamel", "unit", "F", "name", "", "source", " ", "softening-celsius", "212");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains(
            "“212”: expected a number from 842 to 1472 °F.",
            "Give them a name to find them by",
            "Say where you have them from",
            "value=\"212\"");
    assertThat(keep("of", "clay", "name", "x", "source", "y", "data-sheet.top-hold", "90").body())
        .contains(
            "Choose one.", "“90”: expected hours and minutes such as \"1:30\", at most 999:59.");
    assertThat(
            keep(
                    "of",
                    "alloy",
                    "name",
                    "x",
                    "source",
                    "y",
                    "alloy",
                    "z",
                    "pour-mould-celsius",
                    "-400")
                .body())
        .contains("“-400”: expected a number from 20 to 2000 °C.");
    assertThat(keep("of", "enamel", "name", "x", "source", "y").body())
        .contains("Tell at least one value.");
    assertThat(keep("of", "enamel", "name", "Shop clear", "source", "y", "enamel", "soft").body())
        .contains("There are values of that name; choose another.");
    assertThat(store.find(Kind.VALUES, "x")).isEmpty();
    assertThat(asked.get("materials/own?name=Nobody").statusCode()).isEqualTo(404);
  }

  @Test
  void whatTheFormDoesNotAskStaysAndARenameLeavesTheOldOneAway() throws Exception {
    store.keep(
        Kind.VALUES,
        "Lead",
        "values-for: enamel\nsource: a book\noxides-mol-percent: {SiO2: 60, PbO: 40}\nenamel: soft\n");

    keep("of", "enamel", "was", "Lead", "name", "Flux", "source", "a book", "enamel", "hard");

    assertThat(kept("Flux").entries())
        .isEqualTo(Map.of("oxides-mol-percent", "{SiO2: 60, PbO: 40}", "enamel", "hard"));
    assertThat(store.find(Kind.VALUES, "Lead")).isEmpty();
    assertThat(asked.get("shelf").body()).contains("Your own values", "Lead");
  }

  @Test
  void aWorkTakesThemAndGivesThemBack() throws Exception {
    String before = work("Evening enamel");
    assertThat(asked.get("materials").body()).contains("Shop clear", "Put them into the work");

    HttpResponse<String> answer =
        asked.post("materials/into", Map.of("values", "Shop clear", "work", "Evening enamel"));

    assertThat(answer.headers().firstValue("Location"))
        .contains("/materials?put=Shop+clear&into=Evening+enamel#mine");
    assertThat(work("Evening enamel")).contains("softening-celsius: 640").isNotEqualTo(before);
    assertThat(asked.get("materials?put=Shop+clear&into=Evening+enamel").body())
        .contains("stands in the work", "Take it out again", ">Stands in<")
        .doesNotContain("With other values in");
    assertThat(asked.get("plan?work=Evening+enamel&kiln=Buoy&keypad=Gull").statusCode())
        .isEqualTo(200);

    keep(
        "of",
        "enamel",
        "was",
        "Shop clear",
        "name",
        "Shop clear",
        "source",
        "tiles",
        "enamel",
        "hard");
    assertThat(asked.get("materials").body()).contains("With other values in");

    asked.post("materials/back", Map.of("work", "Evening enamel"));
    assertThat(work("Evening enamel")).isEqualTo(before);
    assertThat(asked.get("materials").body()).doesNotContain("With other values in");
  }

  @Test
  void aWorkThatDoesNotTakeThemSaysWhy() throws Exception {
    HttpResponse<String> answer =
        asked.post("materials/into", Map.of("values", "Shop clear", "work", "Harbour burnout"));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("it takes no values of enamel; they go into a work of kind enamel.");
    assertThat(
            asked.post("materials/into", Map.of("values", "No", "work", "Harbour burnout")).body())
        .contains("No: there are no such values on the shelf.");
  }
}
