package org.heatwright.app.slots;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.heatwright.app.files.YamlText;
import org.heatwright.forecast.ClockWords;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.register.DayWords;
import org.heatwright.keypad.register.Holding;
import org.heatwright.keypad.register.Need;
import org.heatwright.keypad.register.Rules;
import org.heatwright.keypad.register.SlotEvent;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;

/** A slot register in words. */
public final class SlotWords {

  private SlotWords() {}

  /** The program's name, or that nobody told. */
  public static String program(Holding contents) {
    return contents.program().map(Schedule::name).orElse("not known");
  }

  /** "732 °C". */
  public static String top(Schedule program) {
    return YamlText.number(program.unit().value(program.peak())) + " " + program.unit().symbol();
  }

  /** On paper from a cold kiln, the start delay left out: "9 h 20 min", "over 3 h". */
  public static String hours(Schedule program, Keypad keypad) {
    FittedProgram fitted = KeypadFit.fit(program, keypad);
    boolean complete = program.segments().stream().allMatch(s -> s.ramp().rate().isPresent());
    String words = HourMinute.words(Duration.ofMinutes(fitted.checkFigures().minutesOnPaper()));
    return complete ? words : "over " + words;
  }

  /** "4 segments, top 732 °C, 9 h 20 min on paper". */
  public static String values(Schedule program, Keypad keypad) {
    int segments = program.segments().size();
    String delay =
        program.startDelay().isZero()
            ? ""
            : ", after a delay of " + HourMinute.words(program.startDelay());
    return "%d %s, top %s, %s on paper%s"
        .formatted(
            segments,
            segments == 1 ? "segment" : "segments",
            top(program),
            hours(program, keypad),
            delay);
  }

  /** "keyed 26 Nov 2026 by the maker"; with what happened since. Empty if nobody told. */
  public static String since(Holding contents, ZoneId zone) {
    if (contents.program().isEmpty()) {
      return "";
    }
    String how =
        switch (contents.known()) {
          case KEYED -> "keyed";
          case LEARNED -> "read once, without a plan,";
          default -> "read back";
        };
    String since =
        "%s %s by the %s"
            .formatted(
                how,
                contents.since().map(at -> DayWords.day(at, zone)).orElse(""),
                contents.by().map(r -> r.word()).orElse(""));
    return contents
        .doubt()
        .map(
            d ->
                "%s; then %s (%s), so it may hold something else now"
                    .formatted(since, d.cause().words(), DayWords.day(d.at(), zone)))
        .orElse(since);
  }

  /** "Thursday class, until 3 Dec 2026". */
  public static String need(Need need) {
    return need.what() + need.until().map(d -> ", until " + DayWords.day(d)).orElse("");
  }

  /** What holds for the proofs of a keypad. */
  public static String rules(Rules rules) {
    return "A proof is good for %d days%s."
        .formatted(
            rules.goodForDays(),
            rules.keepsPrograms()
                ? "; this keypad is told to keep its programs through a power cut"
                : ", and not beyond a power cut");
  }

  /** "26 Nov 2026 14:05". */
  public static String moment(Instant at, ZoneId zone) {
    return DayWords.day(at, zone) + " " + ClockWords.time(at.atZone(zone));
  }

  /** What happened, e.g. "keyed “Burnout”". */
  public static String what(SlotEvent event) {
    if (event instanceof SlotEvent.Keyed keyed) {
      return "keyed “%s”".formatted(keyed.program().name());
    } else if (event instanceof SlotEvent.Learned learned) {
      return "read without a plan: “%s”".formatted(learned.program().name());
    } else if (event instanceof SlotEvent.ReadBack read) {
      return "read back against “%s”: %s"
          .formatted(read.evidence().planned().name(), outcome(read));
    } else if (event instanceof SlotEvent.Edited) {
      return "edited at the keypad";
    } else if (event instanceof SlotEvent.Ran) {
      return "run";
    } else if (event instanceof SlotEvent.Protected wanted) {
      return "needed for %s"
          .formatted(need(new Need(wanted.what(), wanted.until(), wanted.at(), wanted.by())));
    } else if (event instanceof SlotEvent.Released) {
      return "no longer needed";
    } else if (event instanceof SlotEvent.UnitSwitched) {
      return "the unit was switched";
    } else if (event instanceof SlotEvent.PowerCut) {
      return "the power was cut";
    } else if (event instanceof SlotEvent.FiredByOther) {
      return "somebody else fired the kiln";
    } else if (event instanceof SlotEvent.Reset) {
      return "the keypad was replaced or reset";
    } else if (event instanceof SlotEvent.RulesSet set) {
      return "from now on: " + rules(set.rules());
    }
    throw new IllegalArgumentException("There are no words for this event.");
  }

  private static String outcome(SlotEvent.ReadBack read) {
    if (!read.evidence().ofItsSlot()) {
      return "another slot was open";
    }
    Optional<String> proof = read.proof().map(p -> p.words());
    return proof.orElseGet(
        () ->
            switch (read.evidence().report().outcome()) {
              case UNIT_OPEN -> "values right, unit open";
              default -> "it showed something else";
            });
  }
}
