package org.heatwright.work;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.mould.Mould;
import org.heatwright.mould.PourWindow;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.casting.CastingAlloy;
import org.heatwright.work.casting.CastingAlloys;
import org.heatwright.work.casting.MetalNeed;
import org.heatwright.work.casting.PatternMaterial;
import org.heatwright.work.casting.PouringPlan;
import org.heatwright.work.casting.Spread;

/**
 * The pour that a burnout leads to.
 *
 * @param plan temperatures by the sources, cautions and clocks; the studio's own first
 * @param mould temperature of the moulds when they leave the kiln
 * @param least the outermost pattern's place must not be cooler at the pour
 * @param ownLeast whether the studio said so
 * @param kinds one a kind of mould
 */
public record PourSheet(
    PouringPlan plan, Temperature mould, Temperature least, boolean ownLeast, List<Kind> kinds) {

  /** Where the studio says nothing the mould may fall by this much, K. Our choice. */
  public static final double MAY_FALL_KELVINS = 25;

  /** A mould cannot be poured that is as cool as this above its room, K. Our choice. */
  private static final double NEAR_ROOM_KELVINS = 50;

  public PourSheet {
    Objects.requireNonNull(plan, "plan");
    Objects.requireNonNull(mould, "mould");
    Objects.requireNonNull(least, "least");
    kinds = List.copyOf(kinds);
  }

  /**
   * One kind of mould.
   *
   * @param mould size and number
   * @param metal to melt for one of them, where alloy and pattern's mass are known
   * @param airSeconds out of the kiln, until the outermost pattern's place is below the least
   *     temperature, s; empty where it stays above for an hour
   * @param cradleSeconds the same in a casting machine's cradle
   */
  public record Kind(
      Mould mould,
      Optional<MetalNeed> metal,
      Optional<Double> airSeconds,
      Optional<Double> cradleSeconds) {}

  /**
   * Works it out.
   *
   * @param pour temperature of the moulds when they leave the kiln
   * @param room what is around them then
   * @param unit proposed values are tens of its degrees
   * @return empty where the moulds are poured about as cool as the room is
   */
  public static Optional<PourSheet> of(
      BurnoutWork work, Temperature pour, Temperature room, TemperatureUnit unit) {
    if (pour.minus(room).kelvins() < NEAR_ROOM_KELVINS) {
      return Optional.empty();
    }
    PouringPlan plan = PouringPlan.of(work.metal().question(work.investment().binder()), unit);
    Optional<Temperature> own =
        work.metal().leastMould().filter(t -> t.compareTo(pour) < 0 && t.compareTo(room) > 0);
    Temperature least =
        own.orElseGet(() -> pour.plus(TemperatureChange.ofKelvins(-MAY_FALL_KELVINS)));
    List<Kind> kinds = new ArrayList<>();
    for (PatternedMould each : work.moulds()) {
      kinds.add(
          new Kind(
              each.mould(),
              metal(each, plan),
              seconds(work, each.mould(), pour, least, room, PourWindow.Place.AIR),
              seconds(work, each.mould(), pour, least, room, PourWindow.Place.CRADLE)));
    }
    return Optional.of(new PourSheet(plan, pour, least, own.isPresent(), kinds));
  }

  /**
   * The pour at the end of a schedule.
   *
   * @param schedule what is fired; the moulds leave the kiln at its last target
   * @return empty where nothing is poured
   */
  public static Optional<PourSheet> of(Work work, Schedule schedule, Temperature room) {
    Temperature last = schedule.segments().get(schedule.segments().size() - 1).target();
    return work instanceof BurnoutWork burnout
        ? of(burnout, last, room, schedule.unit())
        : Optional.empty();
  }

  /** The kind that falls first, in the air. */
  public Kind quickest() {
    return kinds.stream()
        .min(
            (a, b) ->
                Double.compare(
                    a.airSeconds().orElse(Double.POSITIVE_INFINITY),
                    b.airSeconds().orElse(Double.POSITIVE_INFINITY)))
        .orElseThrow();
  }

  /** Metal for all moulds; empty where it is not known of every kind. */
  public Optional<Spread> metalKilograms() {
    Spread sum = Spread.exactly(0);
    for (Kind kind : kinds) {
      if (kind.metal().isEmpty()) {
        return Optional.empty();
      }
      sum = sum.plus(kind.metal().get().totalKilograms().times(kind.mould().count()));
    }
    return Optional.of(sum);
  }

  private static Optional<MetalNeed> metal(PatternedMould each, PouringPlan plan) {
    Optional<CastingAlloy> alloy = CastingAlloys.find(plan.question().alloy());
    double kilograms = each.patternKilograms().orElse(0);
    Optional<PatternMaterial> material =
        switch (each.pattern()) {
          case WAX -> Optional.of(PatternMaterial.WAX);
          case RESIN -> Optional.of(PatternMaterial.RESIN);
          case UNKNOWN -> Optional.empty();
        };
    if (alloy.isEmpty() || material.isEmpty() || !(kilograms > 0)) {
      return Optional.empty();
    }
    return Optional.of(
        MetalNeed.ofPattern(
            kilograms,
            material.get().kilogramsPerCubicMetre(),
            alloy.get().kilogramsPerCubicMetre(),
            Spread.exactly(0), // a pattern's mass is told with its sprue
            plan.question().method().buttonShare()));
  }

  private static Optional<Double> seconds(
      BurnoutWork work,
      Mould mould,
      Temperature pour,
      Temperature least,
      Temperature room,
      PourWindow.Place place) {
    double depth = PourWindow.usualDepthMetres(mould);
    double seconds =
        PourWindow.of(new PourWindow.Setting(mould, work.investment(), pour, room, place, depth))
            .patternFallsBelowSeconds(least);
    return Double.isFinite(seconds) ? Optional.of(seconds) : Optional.empty();
  }
}
