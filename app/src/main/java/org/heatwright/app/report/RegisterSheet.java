package org.heatwright.app.report;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.slots.SlotWords;
import org.heatwright.keypad.register.DayWords;
import org.heatwright.keypad.register.Holding;
import org.heatwright.keypad.register.Proof;
import org.heatwright.keypad.register.SlotRegister;
import org.heatwright.keypad.register.SlotState;
import org.heatwright.keypad.register.Standing;
import org.heatwright.schedule.Schedule;

/**
 * The slots of a keypad, to hang beside its kiln.
 *
 * @param kiln the kiln's name; likewise {@code keypad}
 * @param day when it was printed
 * @param rules until when a proof counts
 */
public record RegisterSheet(String kiln, String keypad, String day, String rules, List<Row> rows) {

  /** Beyond so many slots, those of which nothing is known share a line. */
  private static final int MOST_SINGLE = 24;

  public RegisterSheet {
    rows = List.copyOf(rows);
  }

  /**
   * One slot.
   *
   * @param slot its number, or "5 to 40" where nothing is known of any
   * @param program its name; empty where it is not known, to be written by hand
   * @param top highest target with its unit; empty likewise
   * @param hours on paper; empty likewise
   * @param proven the day, or why not
   * @param good whether it is proven today
   * @param under what stands under the program: a need, a doubt, what is not covered
   * @param needed whether somebody needs it
   */
  public record Row(
      String slot,
      String program,
      String top,
      String hours,
      String proven,
      boolean good,
      String under,
      boolean needed) {}

  /** A register as it stands at a moment. */
  public static RegisterSheet of(
      String kiln, String keypad, SlotRegister register, Instant now, ZoneId zone) {
    List<Row> rows = new ArrayList<>();
    List<SlotState> slots = register.slots();
    for (int i = 0; i < slots.size(); i++) {
      int end = i;
      while (slots.size() > MOST_SINGLE && end < slots.size() && isBlank(slots.get(end))) {
        end++;
      }
      if (end - i >= 2) {
        rows.add(
            new Row("%d to %d".formatted(i + 1, end), "", "", "", "not known", false, "", false));
        i = end - 1;
      } else {
        rows.add(row(slots.get(i), register, now, zone));
      }
    }
    return new RegisterSheet(
        kiln, keypad, DayWords.day(now, zone), SlotWords.rules(register.rules()), rows);
  }

  private static boolean isBlank(SlotState state) {
    return state.contents().program().isEmpty() && state.need().isEmpty();
  }

  private static Row row(SlotState state, SlotRegister register, Instant now, ZoneId zone) {
    Holding contents = state.contents();
    Optional<Schedule> program = contents.program();
    Standing standing = register.standing(state, now);
    boolean needed = state.need().filter(n -> n.on(now.atZone(zone).toLocalDate())).isPresent();
    List<String> under = new ArrayList<>();
    if (needed) {
      under.add("Needed, do not overwrite: " + state.need().map(SlotWords::need).orElse("") + ".");
    }
    if (contents.doubt().isPresent()) {
      under.add(
          "May hold something else: %s, %s."
              .formatted(
                  contents.doubt().get().cause().words(),
                  DayWords.day(contents.doubt().get().at(), zone)));
    }
    if (standing.kind() == Standing.Kind.GOOD && !standing.proof().map(Proof::whole).orElse(true)) {
      under.add("Not all of it is shown by the review.");
    }
    return new Row(
        Integer.toString(state.slot()),
        program.map(Schedule::name).orElse(""),
        program.map(SlotWords::top).orElse(""),
        program.map(p -> SlotWords.hours(p, register.keypad())).orElse(""),
        program.isEmpty()
            ? "not known"
            : switch (standing.kind()) {
              case GOOD -> standing.proof().map(p -> DayWords.day(p.at(), zone)).orElse("");
              case EXPIRED -> "expired";
              case NEVER -> "never";
            },
        standing.kind() == Standing.Kind.GOOD,
        String.join(" ", under),
        needed);
  }
}
