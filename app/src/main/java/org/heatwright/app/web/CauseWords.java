package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import org.heatwright.inspect.Demands;
import org.heatwright.inspect.Wording;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.causes.Cause;
import org.heatwright.work.causes.Clue;
import org.heatwright.work.causes.Edit;
import org.heatwright.work.causes.Ranking;
import org.heatwright.work.causes.Ranking.Ranked;
import org.heatwright.work.causes.Ranking.Standing;

/** A ranking in words, and the plan that a change leads to. */
final class CauseWords {

  private static final int SHOWN = 4;

  private CauseWords() {}

  /**
   * What a change is to be made to.
   *
   * @param choices of the plan that was fired
   * @param planned its schedule
   * @param demands what its work bears, where that is known
   */
  record Plan(Choices choices, Schedule planned, Optional<Demands> demands) {}

  /**
   * @param ask where an answer to a question leads
   * @param plan that was fired, where it is known
   * @param noted what the log of that day was read to show
   */
  static CausesView view(
      Ranking ranking,
      BiFunction<Clue, Boolean, String> ask,
      Optional<Plan> plan,
      List<String> noted) {
    TemperatureUnit unit = plan.map(p -> p.planned().unit()).orElse(TemperatureUnit.CELSIUS);
    List<CausesView.Row> rows = ranking.causes().stream().map(r -> row(r, unit)).toList();
    int first = 0;
    while (first < rows.size()
        && first < SHOWN
        && ranking.causes().get(first).standing() != Standing.UNLIKELY) {
      first++;
    }
    return new CausesView(
        rows.subList(0, first),
        rows.subList(first, rows.size()),
        ranking.proposed().map(r -> proposed(r.cause(), plan, unit)),
        ranking.dismissed().stream()
            .map(
                d ->
                    new CausesView.Dismissed(
                        Wording.in(d.cause().words(), unit), Wording.in(d.because(), unit)))
            .toList(),
        ranking.questions().stream()
            .map(
                clue ->
                    new CausesView.Question(
                        clue.question(), ask.apply(clue, true), ask.apply(clue, false)))
            .toList(),
        noted);
  }

  private static CausesView.Row row(Ranked ranked, TemperatureUnit unit) {
    Cause cause = ranked.cause();
    return new CausesView.Row(
        ranked.standing().words(),
        Wording.in(cause.words(), unit),
        cause.side().words(),
        ranked.why(),
        ranked.against(),
        cause.trials().stream()
            .map(t -> new CausesView.Test(t.effort().words(), Wording.in(t.words(), unit)))
            .toList(),
        Wording.in(cause.change().words(), unit),
        cause.caution().orElse(""),
        cause.origin().words());
  }

  private static CausesView.Proposed proposed(
      Cause cause, Optional<Plan> plan, TemperatureUnit unit) {
    String words = Wording.in(cause.change().words(), unit);
    Optional<Edit> edit = cause.change().edit();
    if (edit.isEmpty() || plan.isEmpty()) {
      return new CausesView.Proposed(words, "", "");
    }
    Optional<Schedule> changed = edit.get().apply(plan.get().planned());
    if (changed.isEmpty()) {
      return new CausesView.Proposed(
          words, "", "The plan has no such number to change; do it at the kiln.");
    }
    Optional<Demands.Ceiling> ceiling =
        plan.get()
            .demands()
            .flatMap(
                d ->
                    d.ceilings().stream()
                        .filter(c -> changed.get().peak().compareTo(c.limit()) > 0)
                        .filter(
                            c -> changed.get().peak().compareTo(plan.get().planned().peak()) > 0)
                        .findFirst());
    if (ceiling.isPresent()) {
      return new CausesView.Proposed(
          words,
          "",
          "That would go beyond %s, the limit of %s: hold longer instead, and test first."
              .formatted(
                  Wording.of(ceiling.get().limit(), unit), Wording.in(ceiling.get().what(), unit)));
    }
    return new CausesView.Proposed(
        words,
        address(plan.get().choices(), plan.get().planned(), changed.get()),
        "Nothing is changed until you key it; the plan is forecast and inspected anew.");
  }

  /** The plan with the numbers that differ put in as edits; its times are left open. */
  static String address(Choices fired, Schedule planned, Schedule changed) {
    TemperatureUnit unit = planned.unit();
    Map<String, String> edits = new LinkedHashMap<>(fired.edits());
    for (int i = 0; i < planned.segments().size(); i++) {
      Segment was = planned.segments().get(i);
      Segment is = changed.segments().get(i);
      if (!is.ramp().equals(was.ramp())) {
        edits.put("rate" + (i + 1), SegmentFields.rate(is, unit));
      }
      if (!is.target().equals(was.target())) {
        edits.put("target" + (i + 1), SegmentFields.target(is, unit));
      }
      if (!is.hold().equals(was.hold())) {
        edits.put("hold" + (i + 1), SegmentFields.hold(is));
      }
    }
    String of =
        "%s@%s/%d%s"
            .formatted(fired.work(), fired.kiln(), planned.segments().size(), unit.letter());
    return "/plan?" + fired.withAt("").withPress("").withEdits(of, edits).query();
  }

  /** All questions in an order that stays: those that were answered keep their place. */
  static List<Clue> asked(List<Clue> answered, List<Clue> open) {
    List<Clue> all = new ArrayList<>(answered);
    open.stream().filter(clue -> !all.contains(clue)).forEach(all::add);
    return all;
  }
}
