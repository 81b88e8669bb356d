package org.heatwright.app.cli;

import java.time.Duration;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.heatwright.app.files.InputException;
import org.heatwright.app.report.Card;
import org.heatwright.app.report.CardBuilder;
import org.heatwright.forecast.ClockWords;
import org.heatwright.forecast.StartPlan;
import org.heatwright.forecast.StartPlanner;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Inspection;
import org.heatwright.inspect.Inspector;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Outcome;
import org.heatwright.work.PourSheet;

/**
 * A firing with its card, for the commands that hand one out.
 *
 * @param schedule what is fired, delay included
 * @param program what is keyed, where there is a keypad
 * @param planned the forecast and the clock times that follow from it
 * @param findings what the inspection says
 */
record FiredCard(
    Card card,
    Schedule schedule,
    Optional<FittedProgram> program,
    Fire.Planned planned,
    List<Finding> findings) {

  /**
   * @param scheduleFile its name, for what is told
   * @param check may refuse the plan before the card is made
   * @param more what else stands on the card
   */
  static FiredCard of(
      Schedule asked,
      String scheduleFile,
      Optional<Keypad> keypad,
      Fire fire,
      ZonedDateTime now,
      Consumer<Fire.Planned> check,
      Consumer<CardBuilder> more) {
    Optional<FittedProgram> program = keypad.map(k -> fitted(asked, scheduleFile, k));
    Schedule fired = program.map(FittedProgram::expressible).orElse(asked);
    Fire.Planned planned = fire.plan(fired, keypad, now);
    check.accept(planned);
    Timed timed = timed(asked, keypad, program, planned);
    List<Outcome> outcomes = timed.planned().outcomes(timed.schedule());
    List<Finding> findings = findings(timed.schedule(), timed.planned(), keypad, outcomes);
    return new FiredCard(
        card(timed, keypad, outcomes, findings, more),
        timed.schedule(),
        timed.program(),
        timed.planned(),
        findings);
  }

  /** The schedule on a keypad; what does not fit is refused. */
  static FittedProgram fitted(Schedule schedule, String scheduleFile, Keypad keypad) {
    FittedProgram program = KeypadFit.fit(schedule, keypad);
    if (!program.fits()) {
      throw InputException.in(
          scheduleFile,
          "there is no card for what must not be keyed: %s"
              .formatted(program.refusals().get(0).message()));
    }
    return program;
  }

  /** What is keyed, delay included, and the clock times that follow from it. */
  private record Timed(Schedule schedule, Optional<FittedProgram> program, Fire.Planned planned) {}

  /**
   * The delay goes from pressing start to the start, as the keypad can express it, in place of the
   * schedule's own; where it cannot wait that long, the card says when to press start instead.
   */
  private static Timed timed(
      Schedule asked,
      Optional<Keypad> keypad,
      Optional<FittedProgram> program,
      Fire.Planned planned) {
    Optional<Duration> delay = planned.start().flatMap(StartPlan::delayToSet);
    if (delay.isEmpty()) {
      return new Timed(program.map(FittedProgram::expressible).orElse(asked), program, planned);
    }
    if (program.isEmpty()) {
      return new Timed(asked.withStartDelay(delay.get()), program, planned);
    }
    FittedProgram delayed = KeypadFit.fit(asked.withStartDelay(delay.get()), keypad.orElseThrow());
    if (!delayed.fits()) {
      String note =
          "%s Press start at %s, without a delay."
              .formatted(
                  delayed.refusals().get(0).message(),
                  ClockWords.moment(planned.start().orElseThrow().start()));
      FittedProgram atOnce =
          KeypadFit.fit(asked.withStartDelay(Duration.ZERO), keypad.orElseThrow());
      return new Timed(
          atOnce.expressible(),
          Optional.of(atOnce),
          planned.startingAt(planned.start().orElseThrow(), List.of(note)));
    }
    StartPlan plan =
        StartPlanner.startingAt(
            planned.forecast(),
            planned.ready(),
            planned.pressed().plus(delayed.expressible().startDelay()),
            planned.pressed());
    return new Timed(
        delayed.expressible(), Optional.of(delayed), planned.startingAt(plan, plan.notes()));
  }

  private static List<Finding> findings(
      Schedule schedule, Fire.Planned planned, Optional<Keypad> keypad, List<Outcome> outcomes) {
    return Outcome.among(
        planned.findings(
            Inspector.inspect(
                new Inspection(
                    schedule,
                    Optional.of(planned.kiln()),
                    keypad,
                    planned.composition().map(c -> c.demands()),
                    Optional.of(planned.forecast())))),
        outcomes);
  }

  private static Card card(
      Timed timed,
      Optional<Keypad> keypad,
      List<Outcome> outcomes,
      List<Finding> findings,
      Consumer<CardBuilder> more) {
    Fire.Planned planned = timed.planned();
    CardBuilder builder =
        timed
            .program()
            .map(p -> CardBuilder.of(p, keypad.orElseThrow(), planned.kiln(), planned.forecast()))
            .orElseGet(() -> CardBuilder.of(timed.schedule(), planned.kiln(), planned.forecast()));
    planned.composition().ifPresent(made -> builder.composition(made, outcomes));
    planned
        .work()
        .flatMap(work -> PourSheet.of(work, timed.schedule(), planned.kiln().room()))
        .ifPresent(builder::pour);
    planned.start().ifPresent(plan -> builder.start(plan.start(), planned.notes()));
    more.accept(builder);
    return builder.findings(findings).build();
  }
}
