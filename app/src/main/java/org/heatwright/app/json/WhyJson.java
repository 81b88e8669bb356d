package org.heatwright.app.json;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.heatwright.work.causes.Cause;
import org.heatwright.work.causes.Clue;
import org.heatwright.work.causes.Facts;
import org.heatwright.work.causes.Ranking;
import org.heatwright.work.causes.Ranking.Ranked;

/**
 * What {@code why --json} prints: causes likeliest first, what the record contradicts, what is not
 * known and would change the order, and the one change to try.
 */
public record WhyJson(
    String kind,
    String found,
    List<CauseJson> causes,
    List<DismissedJson> contradicted,
    List<QuestionJson> questions,
    Optional<String> change,
    List<FactJson> facts,
    List<String> notes) {

  /** A cause: standing is likely, possible or unlikely. */
  public record CauseJson(
      String code,
      String side,
      String standing,
      String cause,
      List<String> speaksFor,
      List<String> speaksAgainst,
      List<TestJson> tests,
      String change,
      Optional<String> caution,
      String origin) {

    static CauseJson of(Ranked ranked) {
      Cause cause = ranked.cause();
      return new CauseJson(
          cause.code(),
          cause.side().name().toLowerCase(Locale.ROOT),
          ranked.standing().words(),
          cause.words(),
          ranked.why(),
          ranked.against(),
          cause.trials().stream().map(t -> new TestJson(t.effort().words(), t.words())).toList(),
          cause.change().words(),
          cause.caution(),
          cause.origin().words());
    }
  }

  /** A test, with what it takes. */
  public record TestJson(String takes, String test) {}

  /** A cause that the record contradicts. */
  public record DismissedJson(String code, String cause, String because) {}

  /** What would change the order: to be told as {@code clue}. */
  public record QuestionJson(String clue, String question) {}

  /** What was known. */
  public record FactJson(String clue, boolean isSo, String how) {}

  public static WhyJson of(
      String kind, String found, Facts facts, Ranking ranking, Optional<String> note) {
    return new WhyJson(
        kind,
        found,
        ranking.causes().stream().map(CauseJson::of).toList(),
        ranking.dismissed().stream()
            .map(d -> new DismissedJson(d.cause().code(), d.cause().words(), d.because()))
            .toList(),
        ranking.questions().stream()
            .map((Clue clue) -> new QuestionJson(clue.code(), clue.question()))
            .toList(),
        ranking.proposed().map(ranked -> ranked.cause().change().words()),
        facts.known().entrySet().stream()
            .map(e -> new FactJson(e.getKey().code(), e.getValue().isSo(), e.getValue().words()))
            .toList(),
        note.stream().toList());
  }
}
