package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.heatwright.app.languages.Language;
import org.heatwright.app.languages.PageTranslator;
import org.heatwright.app.languages.Phrasebook;
import org.heatwright.forecast.EnsembleProgress;
import org.junit.jupiter.api.Test;

/**
 * Every place of the bench in German, with nothing left in English. With {@code -Dunknown.out=file}
 * what is not in the book is written to a file, for whoever translates.
 */
class GermanBenchTest {

  @Test
  void nothingThatTheBenchSaysStaysEnglish() throws Exception {
    Map<String, String> unknown = new LinkedHashMap<>();
    try (Walk walk = new Walk("en")) {
      walk.everything();
      assertThat(walk.answers.size()).isGreaterThan(400);
      Phrasebook book = Phrasebook.of(Language.GERMAN).with(walk.names());
      walk.answers.forEach(
          (where, answer) ->
              translate(
                  answer,
                  new PageTranslator(
                      Language.GERMAN, book, text -> unknown.putIfAbsent(text, where))));
    }
    String out = System.getProperty("unknown.out", "");
    if (!out.isEmpty()) {
      Files.writeString(
          Path.of(out),
          unknown.entrySet().stream()
              .map(e -> e.getKey() + "\t" + e.getValue() + "\n")
              .collect(Collectors.joining()));
    }
    assertThat(unknown).isEmpty();
  }

  /** The walk is too quick to see these. */
  @Test
  void whatIsShownWhileSomethingIsWorkedOutIsGermanToo() {
    Set<String> unknown = new LinkedHashSet<>();
    PageTranslator german =
        new PageTranslator(Language.GERMAN, Phrasebook.of(Language.GERMAN), unknown::add);
    List<String> steps =
        Stream.concat(
                Stream.of(EnsembleProgress.Part.values())
                    .map(part -> HowFar.sentence(part, 37, 64)),
                Stream.of(
                    "The firing is tried in kilns like this one.",
                    "Both are fired in kilns like this one.",
                    "What was told of it is put beside its forecast.",
                    "What was told is put beside the plan.",
                    "The log is read, column by column.",
                    "The kiln is fitted to all of the logs.",
                    "Something else is worked out first; this comes next."))
            .toList();
    List<String> headings =
        List.of(
            "Working out the plan",
            "Comparing two schedules",
            "Looking for what may be behind it",
            "Working out what the firing does",
            "Reading a log for Capstan",
            "Learning from the logs of Capstan");
    for (String heading : headings) {
      for (String step : steps) {
        german.page(
            new Pages(Optional.empty())
                .waiting(
                    new WaitingPage(
                        "Fri 27 Nov, 06:00",
                        "id",
                        heading,
                        Place.PLAN,
                        step,
                        "3 s",
                        "/",
                        step.length() % 2 == 0)));
      }
    }
    assertThat(unknown).isEmpty();
  }

  private static void translate(Walk.Answer answer, PageTranslator german) {
    if (answer.type().startsWith("text/html")) {
      german.page(answer.body());
    } else if (answer.type().startsWith("image/svg")) {
      german.drawing(answer.body());
    } else if (answer.type().startsWith("application/json")) {
      german.answer(answer.body());
    } else if (answer.type().startsWith("text/plain")) {
      german.sentence(answer.body());
    }
  }

  @Test
  void theLanguageIsWhatWasChosenElseWhatTheBrowserAsksFor() throws Exception {
    try (Walk german = new Walk("de-AT,de;q=0.9,en;q=0.5")) {
      String now = german.get("").body();
      assertThat(now)
          .contains("<html lang=\"de\">", "Nichts ist heiß.", "hreflang=\"de\"")
          .containsPattern("hreflang=\"de\"[^>]*aria-current=\"true\"")
          .doesNotContain("Nothing is hot");
      assertThat(german.get("firing?id=nothing").body())
          .isEqualTo("Im Buch ist kein solcher Brand.");
      assertThat(german.get("languages/words.js").body()).contains("\"Zoom in\":\"Vergrößern\"");
      String plan =
          german
              .plan(Map.of("work", "Harbour burnout", "kiln", "Capstan", "rate1", "quick"))
              .body();
      assertThat(plan).contains("Eine Rate", "höchstens zwei Stellen nach dem Komma");
      AskedBench bench = new AskedBench(german.address());
      String chosen =
          bench
              .send(
                  bench.request("").header("Accept-Language", "de").header("Cookie", "language=en"))
              .body();
      assertThat(chosen).contains("<html lang=\"en\">", "Nothing is hot.");
    }
  }
}
