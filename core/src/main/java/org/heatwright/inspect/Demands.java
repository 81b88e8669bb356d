package org.heatwright.inspect;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;

/**
 * What a piece of work asks of any schedule that is fired on it: limits and minimums, each with the
 * place its number comes from. The composer writes it, the inspector reads it.
 *
 * @param work the work in a few words, e.g. "burnout of 3 gypsum-bonded moulds"
 * @param ceilings temperatures not to pass, in any order
 * @param rateLimits how fast the chamber may rise through a range
 * @param timesWithin how long the chamber must stay in a range, ramps counted
 * @param pourSoak how the schedule must end for a pour; empty where nothing is poured
 * @param noReheat where cooling must not be followed by heating; empty where it does no harm
 * @param startWait how long the work may wait in the kiln before the heat; empty where it may
 * @param peak highest targets that make sense for this work: inside, no number is taken for one of
 *     the other unit
 * @param last last targets that make sense for this work
 * @param readyWithin how near the last target the work must be to count as ready
 * @param cores what must happen inside moulds, one entry a kind; empty where there are none
 * @param windows temperatures that a hold must stay between; empty where only its target counts
 * @param coolingLimits how fast the chamber may fall through a range
 */
public record Demands(
    String work,
    List<Ceiling> ceilings,
    List<RateLimit> rateLimits,
    List<TimeWithin> timesWithin,
    Optional<PourSoak> pourSoak,
    Optional<NoReheat> noReheat,
    Optional<StartWait> startWait,
    TemperatureRange peak,
    TemperatureRange last,
    TemperatureChange readyWithin,
    List<CoreDemands> cores,
    List<Window> windows,
    List<RateLimit> coolingLimits) {

  /** Work that is no mould: nothing is poured, nothing inside it asks for more. */
  public Demands(
      String work,
      List<Ceiling> ceilings,
      List<RateLimit> rateLimits,
      List<TimeWithin> timesWithin,
      TemperatureRange peak,
      TemperatureRange last,
      TemperatureChange readyWithin,
      List<Window> windows,
      List<RateLimit> coolingLimits) {
    this(
        work,
        ceilings,
        rateLimits,
        timesWithin,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        peak,
        last,
        readyWithin,
        List.of(),
        windows,
        coolingLimits);
  }

  public Demands {
    Objects.requireNonNull(work, "work");
    ceilings = List.copyOf(ceilings);
    rateLimits = List.copyOf(rateLimits);
    timesWithin = List.copyOf(timesWithin);
    Objects.requireNonNull(pourSoak, "pourSoak");
    Objects.requireNonNull(noReheat, "noReheat");
    Objects.requireNonNull(startWait, "startWait");
    Objects.requireNonNull(peak, "peak");
    Objects.requireNonNull(last, "last");
    cores = List.copyOf(cores);
    windows = List.copyOf(windows);
    coolingLimits = List.copyOf(coolingLimits);
    if (!(readyWithin.kelvins() > 0)) {
      throw new IllegalArgumentException(
          "Ready within (%s K) must be above zero.".formatted(readyWithin.kelvins()));
    }
  }

  /** The lowest ceiling that a schedule must not pass, if there is one. */
  public Optional<Ceiling> firmCeiling() {
    return ceilings.stream()
        .filter(c -> c.beyond() == Severity.STOP)
        .min((a, b) -> a.limit().compareTo(b.limit()));
  }

  /**
   * A temperature not to pass.
   *
   * @param limit the highest setting that is still right
   * @param beyond how much it matters to go beyond
   * @param what whose limit it is, e.g. "the gypsum-bonded mould"
   * @param consequence what would happen beyond, a clause: "sulphur gas spoils the castings"
   * @param origin where the limit comes from
   */
  public record Ceiling(
      Temperature limit, Severity beyond, String what, String consequence, Origin origin) {
    public Ceiling {
      Objects.requireNonNull(limit, "limit");
      Objects.requireNonNull(beyond, "beyond");
      Objects.requireNonNull(what, "what");
      Objects.requireNonNull(consequence, "consequence");
      Objects.requireNonNull(origin, "origin");
    }
  }

  /**
   * The fastest rise, or fall, allowed through a range of chamber temperatures.
   *
   * @param code code of the finding when it is passed
   * @param range where it applies
   * @param most the fastest rise or fall
   * @param atFastest how much a full-power ramp through the range matters
   * @param consequence what would happen, a clause: "steam can blow the mould out"
   * @param origin where the limit comes from
   */
  public record RateLimit(
      String code,
      TemperatureRange range,
      HeatingRate most,
      Severity atFastest,
      String consequence,
      Origin origin) {
    public RateLimit {
      Objects.requireNonNull(code, "code");
      Objects.requireNonNull(range, "range");
      Objects.requireNonNull(most, "most");
      Objects.requireNonNull(atFastest, "atFastest");
      Objects.requireNonNull(consequence, "consequence");
      Objects.requireNonNull(origin, "origin");
    }
  }

  /**
   * The time the chamber must spend in a range, holds and ramps together.
   *
   * @param code code of the finding when the time is too short
   * @param purpose what the time is for, e.g. "carbon out"
   * @param range where it counts
   * @param atLeast the least time
   * @param consequence what would happen, a clause: "carbon stays in the mould"
   * @param origin where the time comes from
   */
  public record TimeWithin(
      String code,
      String purpose,
      TemperatureRange range,
      Duration atLeast,
      String consequence,
      Origin origin) {
    public TimeWithin {
      Objects.requireNonNull(code, "code");
      Objects.requireNonNull(purpose, "purpose");
      Objects.requireNonNull(range, "range");
      Objects.requireNonNull(atLeast, "atLeast");
      Objects.requireNonNull(consequence, "consequence");
      Objects.requireNonNull(origin, "origin");
    }
  }

  /**
   * How a schedule ends for a pour: at one temperature, long enough for the core to follow.
   *
   * @param target temperature of the mould at the pour
   * @param atLeast hold before the first mould is drawn
   * @param origin where the time comes from
   */
  public record PourSoak(Temperature target, Duration atLeast, Origin origin) {
    public PourSoak {
      Objects.requireNonNull(target, "target");
      Objects.requireNonNull(atLeast, "atLeast");
      Objects.requireNonNull(origin, "origin");
    }
  }

  /**
   * Once above, work that has cooled below must not be heated again.
   *
   * @param below the temperature
   * @param consequence what would happen, a clause
   * @param origin where the rule comes from
   */
  public record NoReheat(Temperature below, String consequence, Origin origin) {
    public NoReheat {
      Objects.requireNonNull(below, "below");
      Objects.requireNonNull(consequence, "consequence");
      Objects.requireNonNull(origin, "origin");
    }
  }

  /**
   * The longest wait in the kiln before the heat.
   *
   * @param most the longest start delay
   * @param consequence what would happen, a clause: "a half-dry mould cracks when it is heated"
   * @param origin where the time comes from
   */
  public record StartWait(Duration most, String consequence, Origin origin) {
    public StartWait {
      Objects.requireNonNull(most, "most");
      Objects.requireNonNull(consequence, "consequence");
      Objects.requireNonNull(origin, "origin");
    }
  }

  /**
   * What a hold must stay between, for work that is particular about it.
   *
   * @param range the window; targets outside it are no business of it
   * @param what whose window it is, e.g. "keum-boo of fine silver"
   * @param beyond what happens above, a clause
   * @param below what happens below, a clause
   * @param origin where the window comes from
   */
  public record Window(
      TemperatureRange range, String what, String beyond, String below, Origin origin) {
    public Window {
      Objects.requireNonNull(range, "range");
      Objects.requireNonNull(what, "what");
      Objects.requireNonNull(beyond, "beyond");
      Objects.requireNonNull(below, "below");
      Objects.requireNonNull(origin, "origin");
    }
  }
}
