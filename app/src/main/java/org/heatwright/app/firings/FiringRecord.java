package org.heatwright.app.firings;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.files.KilnFile;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.files.WorkFile;
import org.heatwright.app.report.KilnOnKeypad;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.keypad.Keypad;
import org.heatwright.kiln.Kiln;
import org.heatwright.schedule.Schedule;
import org.heatwright.work.Work;

/**
 * A firing in the book: as it was planned, as it was keyed, as it went. The three are kept apart.
 *
 * @param entry as the store keeps it
 */
public record FiringRecord(FiringEntry entry) {

  /** Where a firing stands. */
  public enum State {
    /** Start was not pressed yet. */
    PLANNED,
    /** Start was pressed and nobody said that the work is out. */
    RUNNING,
    /** The work is out. */
    DONE
  }

  /** What was wrong with it, or "good"; and what was said about it. */
  public record Result(String id, Instant at, String outcome, String note) {}

  public String id() {
    return entry.id();
  }

  public State state() {
    if (pressed().isEmpty()) {
      return State.PLANNED;
    }
    return out().isPresent() || result().isPresent() ? State.DONE : State.RUNNING;
  }

  /** When start was pressed. */
  public Optional<Instant> pressed() {
    return last(Happening.PRESSED).map(FiringEntry.Told::at);
  }

  /** When the work came out, or the firing was stopped. */
  public Optional<Instant> out() {
    return last(Happening.OUT).map(FiringEntry.Told::at);
  }

  /** How it came out; what was told last counts. */
  public Optional<Result> result() {
    return last(Happening.RESULT)
        .map(
            told -> {
              String[] parts = told.text().split("\n", 2);
              return new Result(told.id(), told.at(), parts[0], parts.length > 1 ? parts[1] : "");
            });
  }

  /** Lines of a kind, by when they happened. */
  public List<FiringEntry.Told> all(Happening kind) {
    return entry.told().stream()
        .filter(told -> told.kind().equals(kind.word()))
        .sorted(Comparator.comparing(FiringEntry.Told::at))
        .toList();
  }

  private Optional<FiringEntry.Told> last(Happening kind) {
    return entry.told().stream()
        .filter(told -> told.kind().equals(kind.word()))
        .reduce((earlier, later) -> later);
  }

  /** What was to be keyed. */
  public Schedule planned() {
    return ScheduleFile.read(entry.planned(), "the planned schedule");
  }

  /** What the slot held when start was pressed, where the register knew. */
  public Optional<Schedule> keyed() {
    return held().map(told -> ScheduleFile.read(told.text(), "the keyed schedule"));
  }

  /** It was told with the press that counts; one of a press that was taken back does not. */
  private Optional<FiringEntry.Told> held() {
    return last(Happening.KEYED).filter(told -> pressed().equals(Optional.of(told.at())));
  }

  /** How sure that was: a sentence; empty where the register knew nothing. */
  public String keyedStanding() {
    return held()
        .flatMap(told -> told.text().lines().findFirst())
        .filter(line -> line.startsWith("# "))
        .map(line -> line.substring(2))
        .orElse("");
  }

  /** What runs: what was keyed where that is known, else what was planned. */
  public Schedule runs() {
    return keyed().map(k -> k.withName(planned().name())).orElseGet(this::planned);
  }

  /** Whether the slot held something else than was planned. */
  public boolean keyedOtherwise() {
    Schedule planned = planned();
    return keyed()
        .filter(
            keyed ->
                !keyed.segments().equals(planned.segments())
                    || !keyed.startDelay().equals(planned.startDelay()))
        .isPresent();
  }

  /** The kiln as it was known when it was planned, on the keypad's controller. */
  public Kiln kiln() {
    return KilnOnKeypad.of(KilnFile.read(entry.kilnText(), entry.kiln()), Optional.of(keypad()));
  }

  public Keypad keypad() {
    return KeypadFile.read(entry.keypadText(), entry.keypad());
  }

  public Work work() {
    return WorkFile.read(entry.work(), entry.job());
  }

  /** When the program's first segment began or would begin, in the kiln's zone. */
  public ZonedDateTime programStart(ZoneId fallback) {
    return pressed()
        .orElse(entry.press())
        .atZone(kiln().timeZone().orElse(fallback))
        .plus(runs().startDelay());
  }
}
