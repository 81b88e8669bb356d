package org.heatwright.work.causes;

import java.util.Optional;
import org.heatwright.forecast.Band;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Kiln;
import org.heatwright.work.BurnoutWork;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.GlassWork;
import org.heatwright.work.HeatTreatWork;
import org.heatwright.work.PatternedMould;
import org.heatwright.work.SinterWork;
import org.heatwright.work.Work;

/** What work, kiln and clock tell without any reading. */
public final class WorkFacts {

  /** Taken out earlier than it could be ready by more than this, s. */
  private static final double EARLY_SECONDS = 300;

  /** Left longer than it had to be by more than this, s. {@code estimate:} */
  private static final double LATE_SECONDS = 4 * 3600.0;

  private WorkFacts() {}

  /** What is made of what. */
  public static Facts of(Work work) {
    Facts none = Facts.none();
    if (work instanceof BurnoutWork burnout) {
      boolean resin =
          burnout.moulds().stream().anyMatch(m -> m.pattern() != PatternedMould.Pattern.WAX);
      return say(none, Clue.RESIN, resin);
    }
    if (work instanceof EnamelWork enamel) {
      return enamel
          .build()
          .counter()
          .map(c -> none.with(Clue.NO_COUNTER, false, "By the work's file the back is enamelled."))
          .orElse(none);
    }
    if (work instanceof SinterWork clay) {
      return say(none, Clue.INSET, inset(clay));
    }
    if (work instanceof HeatTreatWork treated) {
      return treated.own().solderFlow().isPresent()
          ? none.with(Clue.SOLDERED, true, "By the work's file it has solder joints.")
          : none;
    }
    if (work instanceof GlassWork glass) {
      return say(none, Clue.MIXED_GLASS, glass.accent().isPresent());
    }
    return none;
  }

  private static boolean inset(SinterWork clay) {
    return clay.pieces().stream().anyMatch(p -> p.embedded() != SinterWork.Embedded.NONE);
  }

  private static Facts say(Facts facts, Clue clue, boolean isSo) {
    return facts.with(clue, isSo, "By the work's file " + clue.words(isSo) + ".");
  }

  /** What the kiln's file tells. */
  public static Facts of(Kiln kiln) {
    boolean swings = kiln.control().kind() == Control.Kind.ON_OFF;
    return Facts.none()
        .with(
            Clue.SWINGS,
            swings,
            swings
                ? "%s switches on and off and swings about its target.".formatted(kiln.name())
                : "%s holds steadily.".formatted(kiln.name()));
  }

  /**
   * When the work came out.
   *
   * @param outSeconds s from the program's start
   * @param ready when it was ready, likewise; empty where that is not sure
   */
  public static Facts out(double outSeconds, Optional<Band> ready) {
    if (ready.isEmpty()) {
      return Facts.none();
    }
    boolean early = outSeconds < ready.get().low() - EARLY_SECONDS;
    boolean late = outSeconds > ready.get().high() + LATE_SECONDS;
    String sentence =
        "It came out %s after the program began; it was ready between %s and %s."
            .formatted(hours(outSeconds), hours(ready.get().low()), hours(ready.get().high()));
    return Facts.none().with(Clue.OUT_EARLY, early, sentence).with(Clue.OUT_LATE, late, sentence);
  }

  private static String hours(double seconds) {
    return org.heatwright.schedule.HourMinute.words(
        java.time.Duration.ofMinutes(Math.max(0, Math.round(seconds / 60))));
  }
}
