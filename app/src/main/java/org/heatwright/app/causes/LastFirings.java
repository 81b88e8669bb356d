package org.heatwright.app.causes;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.heatwright.app.files.InputException;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.inspect.Wording;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;

/**
 * A firing beside the last three of its kind of work: what was the same and what was not.
 *
 * @param sameKiln whether they are of the same kiln; else of any
 * @param sameWork whether they are all of the same work on the shelf
 * @param firings this one first, then the others, the latest first
 * @param rows what is compared
 */
public record LastFirings(
    boolean sameKiln, boolean sameWork, List<FiringRecord> firings, List<Row> rows) {

  private static final int MOST = 3;
  private static final String UNKNOWN = "not known";

  /**
   * One line of the comparison.
   *
   * @param what is compared
   * @param cells one a firing, in their order
   */
  public record Row(String what, List<Cell> cells) {
    public Row {
      cells = List.copyOf(cells);
    }
  }

  /**
   * @param words what it was
   * @param differs whether it is known and not what it was in this firing
   */
  public record Cell(String words, boolean differs) {}

  public LastFirings {
    firings = List.copyOf(firings);
    rows = List.copyOf(rows);
  }

  /**
   * Finds them: of the same kiln where there is one, else of any; those of the same work go first.
   *
   * @param all the book, the one pressed last first
   * @param outcome words of a firing's outcome
   * @return empty where no other firing of this kind is done
   */
  public static Optional<LastFirings> before(
      FiringRecord firing, List<FiringRecord> all, Function<FiringRecord, String> outcome) {
    Instant pressed = firing.pressed().orElse(firing.entry().press());
    List<FiringRecord> kind =
        all.stream()
            .filter(f -> !f.id().equals(firing.id()))
            .filter(f -> f.state() == FiringRecord.State.DONE)
            .filter(f -> f.entry().kind().equals(firing.entry().kind()))
            .filter(f -> f.pressed().orElse(Instant.MAX).isBefore(pressed))
            .filter(LastFirings::readable)
            .toList();
    List<FiringRecord> here =
        kind.stream().filter(f -> f.entry().kiln().equals(firing.entry().kiln())).toList();
    List<FiringRecord> chosen = here.isEmpty() ? kind : here;
    List<FiringRecord> work =
        chosen.stream().filter(f -> f.entry().job().equals(firing.entry().job())).toList();
    boolean sameWork = work.size() >= Math.min(MOST, chosen.size()) && !work.isEmpty();
    List<FiringRecord> last = (sameWork ? work : chosen).stream().limit(MOST).toList();
    if (last.isEmpty() || !readable(firing)) {
      return Optional.empty();
    }
    List<FiringRecord> together = new ArrayList<>();
    together.add(firing);
    together.addAll(last);
    return Optional.of(
        new LastFirings(!here.isEmpty(), sameWork, together, rows(together, outcome)));
  }

  private static boolean readable(FiringRecord firing) {
    try {
      firing.planned();
      return true;
    } catch (InputException ofAnotherVersion) {
      return false;
    }
  }

  private static List<Row> rows(
      List<FiringRecord> firings, Function<FiringRecord, String> outcome) {
    TemperatureUnit unit = firings.get(0).planned().unit();
    List<Row> rows = new ArrayList<>();
    rows.add(row("came out", firings, outcome));
    rows.add(row("work", firings, f -> f.entry().job()));
    rows.add(row("kiln", firings, f -> f.entry().kiln()));
    rows.add(row("top, planned", firings, f -> degrees(f.planned().peak().celsius(), unit)));
    rows.add(row("highest read", firings, f -> highest(f, unit)));
    rows.add(row("held at the top", firings, f -> topHold(f.planned())));
    rows.add(row("fastest rise", firings, f -> fastest(f.planned(), unit)));
    rows.add(row("last target", firings, f -> last(f.planned(), unit)));
    rows.add(row("delay", firings, f -> HourMinute.words(f.planned().startDelay())));
    rows.add(row("start to out", firings, LastFirings::length));
    rows.add(row("keyed", firings, LastFirings::keyed));
    rows.add(row("first read", firings, f -> first(f, unit)));
    rows.add(row("load", firings, LastFirings::load, "as above", "another than this one's"));
    return rows;
  }

  private static Row row(
      String what, List<FiringRecord> firings, Function<FiringRecord, String> words) {
    String here = words.apply(firings.get(0));
    return new Row(
        what,
        firings.stream()
            .map(words)
            .map(w -> new Cell(w, !w.equals(here) && !w.equals(UNKNOWN) && !here.equals(UNKNOWN)))
            .toList());
  }

  /** What is too long to be shown is told as the same or another. */
  private static Row row(
      String what,
      List<FiringRecord> firings,
      Function<FiringRecord, String> value,
      String same,
      String other) {
    String here = value.apply(firings.get(0));
    List<Cell> cells = new ArrayList<>();
    cells.add(new Cell("by its file", false));
    for (FiringRecord firing : firings.subList(1, firings.size())) {
      boolean differs = !Objects.equals(value.apply(firing), here);
      cells.add(new Cell(differs ? other : same, differs));
    }
    return new Row(what, cells);
  }

  private static String degrees(double celsius, TemperatureUnit unit) {
    return Wording.whole(celsius, unit);
  }

  private static String highest(FiringRecord firing, TemperatureUnit unit) {
    OptionalDouble most =
        firing.all(Happening.SHOWN).stream()
            .mapToDouble(told -> told.celsius().orElseThrow())
            .max();
    return most.isPresent() ? degrees(most.getAsDouble(), unit) : UNKNOWN;
  }

  private static String first(FiringRecord firing, TemperatureUnit unit) {
    List<FiringEntry.Told> shown = firing.all(Happening.SHOWN);
    return shown.isEmpty() ? UNKNOWN : degrees(shown.get(0).celsius().orElseThrow(), unit);
  }

  private static String topHold(Schedule schedule) {
    long minutes =
        schedule.segments().stream()
            .filter(s -> s.target().equals(schedule.peak()))
            .mapToLong(s -> s.hold().toMinutes())
            .sum();
    return HourMinute.words(Duration.ofMinutes(minutes));
  }

  private static String fastest(Schedule schedule, TemperatureUnit unit) {
    double most = 0;
    String words = UNKNOWN;
    double before = Double.NEGATIVE_INFINITY;
    for (Segment segment : schedule.segments()) {
      boolean rises = segment.target().celsius() > before;
      before = segment.target().celsius();
      double rate = segment.ramp().rate().map(r -> r.kelvinsPerHour()).orElse(Double.MAX_VALUE);
      if (rises && rate > most) {
        most = rate;
        words = Wording.of(segment.ramp(), unit);
      }
    }
    return words;
  }

  private static String last(Schedule schedule, TemperatureUnit unit) {
    return degrees(
        schedule.segments().get(schedule.segments().size() - 1).target().celsius(), unit);
  }

  private static String length(FiringRecord firing) {
    Optional<Instant> pressed = firing.pressed();
    Optional<Instant> end = firing.out();
    return pressed.isPresent() && end.isPresent()
        ? HourMinute.words(
            Duration.ofMinutes(Duration.between(pressed.get(), end.get()).toMinutes()))
        : UNKNOWN;
  }

  private static String keyed(FiringRecord firing) {
    if (firing.keyed().isEmpty()) {
      return UNKNOWN;
    }
    return firing.keyedOtherwise() ? "otherwise than planned" : "as planned";
  }

  private static String load(FiringRecord firing) {
    return firing.entry().work().strip();
  }
}
