package org.heatwright.app.report;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import org.heatwright.forecast.Band;
import org.heatwright.inspect.Finding;
import org.heatwright.schedule.AtEnd;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Found;

/**
 * Everything a firing card says: before, during and after. One page holds it. Times are seconds
 * from the program's start (after any delay); with a start they print as clock times with weekday
 * and date, without one as elapsed times beside blanks.
 *
 * @param header what, where, who
 * @param timing start, ready window, end
 * @param digitHeads what the three digits of a segment are, with their unit, in keying order
 * @param entries one a segment, in order
 * @param extras what else is keyed, in order: start delay, number of segments, end mark
 * @param checkFigures figures the keypad cannot fake: label and value with unit
 * @param work what is in the kiln
 * @param limits what must not be exceeded, and why
 * @param power power, current, circuit
 * @param loading the checklist before the door shuts
 * @param display what the display should say at some times, rising
 * @param alarms three signs and what to do, one line each
 * @param estimates what the work inside does
 * @param pour what to know for the pour; empty where nothing is poured
 * @param piece what happens in the piece; empty where nothing is told
 * @param pieceChart the curve of a piece that goes into the hot kiln, on its own clock
 * @param moments what a person must do, and when, in order of time
 * @param found what a person may find when the kiln is opened, to tick
 * @param nextService when the kiln is due, where known
 * @param findings what the inspection says, worst first
 * @param cautions what would happen and what to do
 * @param scheduleText the schedule in one paragraph
 * @param code the schedule as {@link org.heatwright.app.files.ScheduleCode} writes it, for another
 *     bench to read from the page; empty where no schedule file may hold it
 * @param chart the curve
 */
public record Card(
    Header header,
    Timing timing,
    List<String> digitHeads,
    List<Entry> entries,
    List<Extra> extras,
    List<Fact> checkFigures,
    List<Fact> work,
    List<Fact> limits,
    List<Fact> power,
    List<String> loading,
    List<DisplayRow> display,
    List<Alarm> alarms,
    List<String> estimates,
    List<Fact> pour,
    List<Fact> piece,
    Optional<PieceChart> pieceChart,
    List<Act> moments,
    List<Found> found,
    Optional<String> nextService,
    List<Finding> findings,
    List<String> cautions,
    String scheduleText,
    Optional<String> code,
    ChartData chart) {

  private static final int DIGITS = 3;

  /** Printed on every card. */
  public static final String NEVER_STARTS_HEAT =
      "Heatwright never starts heat: a person at the kiln presses start.";

  /** Printed on every card. */
  public static final String MAKERS_FIRST = "Makers' data sheets and local rules come first.";

  public Card {
    digitHeads = List.copyOf(digitHeads);
    entries = List.copyOf(entries);
    extras = List.copyOf(extras);
    checkFigures = List.copyOf(checkFigures);
    work = List.copyOf(work);
    limits = List.copyOf(limits);
    power = List.copyOf(power);
    loading = List.copyOf(loading);
    display = List.copyOf(display);
    alarms = List.copyOf(alarms);
    estimates = List.copyOf(estimates);
    pour = List.copyOf(pour);
    piece = List.copyOf(piece);
    moments = List.copyOf(moments);
    found = List.copyOf(found);
    findings = List.copyOf(findings);
    cautions = List.copyOf(cautions);
    Objects.requireNonNull(scheduleText, "scheduleText");
    if (digitHeads.size() != DIGITS
        || entries.stream().anyMatch(e -> e.digits().size() != DIGITS)) {
      throw new IllegalArgumentException("A segment on a card has a rate, a target and a hold.");
    }
  }

  /**
   * @param job what the firing is called
   * @param kiln the kiln's name
   * @param keypad the keypad's name, where described
   * @param slot the program slot to key it into, where chosen
   * @param unit the unit in force: every digit to key is in it
   * @param zone zone of every clock time
   * @param responsible role of the responsible person; empty prints a blank
   * @param phone empty prints a blank
   */
  public record Header(
      String job,
      String kiln,
      Optional<String> keypad,
      OptionalInt slot,
      TemperatureUnit unit,
      ZoneId zone,
      Optional<String> responsible,
      Optional<String> phone) {
    public Header {
      if (job.isBlank() || kiln.isBlank()) {
        throw new IllegalArgumentException("A card needs a job and a kiln.");
      }
    }
  }

  /**
   * @param start when the program's first segment begins; empty: not planned, clock times are blank
   * @param delayed whether the controller waits between being started and the first segment
   * @param ready when the work is ready, and until when; empty: not surely while the program runs
   * @param ending when the program ends, if it does
   * @param atEnd what the controller does then
   * @param notes on daylight saving and the like
   */
  public record Timing(
      Optional<ZonedDateTime> start,
      boolean delayed,
      Optional<Ready> ready,
      Ending ending,
      AtEnd atEnd,
      List<String> notes) {
    public Timing {
      notes = List.copyOf(notes);
    }

    /** How what is ready stays so by itself; empty where it does not, or nothing surely is. */
    public Optional<Keeping> keeping() {
      return ready
          .filter(r -> r.untilSeconds().isEmpty())
          .map(
              r ->
                  atEnd == AtEnd.OFF && ending.earliestSeconds().isPresent()
                      ? Keeping.COLD
                      : Keeping.HOT);
    }
  }

  /**
   * Something to key that belongs to no segment.
   *
   * @param what it is, e.g. "start delay"
   * @param digits what to key
   * @param meaning in words, e.g. "3 h 30 min, start pressed Wed 2 Dec 17:00"
   * @param beforeSegments whether it is keyed before the segments
   */
  public record Extra(String what, String digits, String meaning, boolean beforeSegments) {}

  /** How work that is ready stays ready. */
  public enum Keeping {
    /** It was ready when it had cooled. */
    COLD("cold", "and it keeps"),
    HOT("kept hot", "until a person ends it");

    private final String how;
    private final String until;

    Keeping(String how, String until) {
      this.how = how;
      this.until = until;
    }

    public String how() {
      return how;
    }

    public String until() {
      return until;
    }

    /** Both in a sentence: "cold, and it keeps", "kept hot until a person ends it". */
    public String words() {
      return how + (this == COLD ? ", " : " ") + until;
    }
  }

  /**
   * @param what is ready, e.g. "Moulds ready to pour"
   * @param fromSeconds from when, s from the program's start
   * @param untilSeconds until when, s from the program's start; empty: until a person stops it, or
   *     for good where the work is ready when it has cooled
   */
  public record Ready(String what, Band fromSeconds, Optional<Double> untilSeconds) {}

  /**
   * One segment: what to key, what it means, when it gets there.
   *
   * @param segment 1-based
   * @param purpose why it is there, e.g. "dry"
   * @param digits rate, target and hold as the keypad takes them, in keying order
   * @param meaning in words, with units
   * @param reachedSeconds when the target counts as reached and the hold's clock starts, s from the
   *     program's start; a controller that does not wait starts it with the setpoint; empty where
   *     the kiln may never get there
   */
  public record Entry(
      int segment,
      String purpose,
      List<String> digits,
      String meaning,
      Optional<Band> reachedSeconds) {
    public Entry {
      digits = List.copyOf(digits);
    }
  }

  /** A figure and what it is; the value carries its unit. */
  public record Fact(String label, String value) {}

  /** At a time (s from the program's start) the display should be inside a band (°C). */
  public record DisplayRow(double seconds, Band displayCelsius) {}

  /** A sign of trouble and what to do, one line each. */
  public record Alarm(String sign, String action) {}

  /**
   * Something a person must do or may still do.
   *
   * @param what in words, e.g. "pour the moulds"
   * @param seconds when, s from the program's start
   * @param actNow true if it cannot wait: the calendar rings
   * @param deadline true if what is done after it is too late
   */
  public record Act(String what, Band seconds, boolean actNow, boolean deadline) {

    /**
     * The one time that stands for it, in full: a deadline is the earliest that it may be too late,
     * down to the minute; anything else its median.
     */
    public String at(WhenWords when) {
      return when.full(atSeconds(when));
    }

    /** The same, s from the program's start. */
    double atSeconds(WhenWords when) {
      return deadline ? when.minuteBefore(seconds.low()) : seconds.median();
    }
  }
}
