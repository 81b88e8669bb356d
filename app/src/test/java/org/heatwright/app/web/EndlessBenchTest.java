package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.heatwright.app.languages.Language;
import org.heatwright.app.store.Kind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
