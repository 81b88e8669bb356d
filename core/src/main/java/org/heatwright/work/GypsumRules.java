package org.heatwright.work;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.Draft.Why;
import org.heatwright.work.casting.AlloyFamily;
import org.heatwright.work.casting.UsualMould;

/** Gypsum-bonded moulds. */
final class GypsumRules implements BinderRules {

  private static final Origin CYCLES =
      Origin.read(
          "three cycles of an investment maker by mould size, as quoted by a caster on a bench"
              + " forum");
  private static final Origin CYCLES_FITTED =
      Origin.read(CYCLES.text() + "; the line through them is our fit");
  private static final Origin DRY_HOLDS =
      Origin.read(
          CYCLES.text()
              + ", 2 h at 149 °C for every size; a bench-forum thread, 3 h for a full kiln; 3 h above"
              + " 102 mm is our estimate");
  private static final Origin WAX_RESTS =
      Origin.read(
          CYCLES.text()
              + ", 371 °C; an abstract on gypsum-bonded investment, which shrinks at 350 to 450 °C");
  private static final Origin TOPS =
      Origin.read(
          CYCLES.text()
              + ", 732 °C; abstracts: carbon burns from 600 °C, carbon monoxide attacks the binder"
              + " above 750 °C; the range is common practice");
  private static final Origin TOP_HOLDS =
      Origin.read(
          CYCLES.text()
              + ", 2 to 4 h; a bench-forum thread, 8 h for a full kiln; the line through the cycles is"
              + " our fit");
  private static final Origin MACHINE_MANUAL =
      Origin.read(
          "manual of a small casting machine, 150 °C/h small and 65 to 80 °C/h large; the square law"
              + " between them and the floor of 50 °C/h are our estimate");

  /** The slow end of practice for large moulds. {@code estimate:} */
  static final double LEAST_RISE_KELVINS_PER_HOUR = 50;

  private static final Temperature TOP = Temperature.ofCelsius(730);

  @Override
  public String bonded() {
    return "gypsum-bonded";
  }

  // ---- water

  @Override
  public Reasoned<Temperature> dry() {
    return new Reasoned<>(
        Temperature.ofCelsius(150),
        new Why(
            "Warm enough to boil the water off slowly, and the wax runs out.", "149 °C", CYCLES));
  }

  @Override
  public TemperatureRange wet() {
    return TemperatureRange.ofCelsius(20, 200);
  }

  @Override
  public Duration dryHold(double millimetres, double kilnFactor) {
    return Duration.ofHours(millimetres > 102 || kilnFactor > 1 ? 3 : 2);
  }

  @Override
  public Why dryHoldWhy() {
    return new Why("Practice: 2 h; 3 h above 102 mm or in a crowded kiln.", "2 to 3 h", DRY_HOLDS);
  }

  /** At 150 °C a thick mould boils for longer than a night: the next ramp takes it on, slowly. */
  @Override
  public boolean driesThrough() {
    return false;
  }

  @Override
  public Duration leastDryTime(double millimetres) {
    return Duration.ofHours(millimetres <= BurnoutRules.SMALL_MILLIMETRES ? 1 : 2);
  }

  @Override
  public Temperature dryUpTo() {
    return Temperature.ofCelsius(205);
  }

  // ---- rates

  @Override
  public Reasoned<HeatingRate> earlyRise(double millimetres) {
    return new Reasoned<>(
        BurnoutRules.scaledRise(
            150, millimetres, BurnoutRules.SMALL_MILLIMETRES, LEAST_RISE_KELVINS_PER_HOUR),
        new Why(
            "Below about 200 °C steam must find its way out: 150 °C/h for a mould of 65 mm, less"
                + " with the square of the diameter, never under 50 °C/h.",
            "50 to 150 °C/h by size",
            MACHINE_MANUAL));
  }

  @Override
  public Reasoned<HeatingRate> lateRise(double millimetres) {
    return new Reasoned<>(
        HeatingRate.ofKelvinsPerHour(millimetres <= 75 ? 200 : 150),
        new Why(
            "Slow enough for quartz to turn at 573 °C without cracks: 200 °C/h up to 75 mm, 150 °C/h"
                + " beyond.",
            "150 to 200 °C/h",
            Origin.practice()));
  }

  @Override
  public HeatingRate fastestWetRise(double millimetres) {
    return BurnoutRules.scaledRise(150, millimetres, 90, 65);
  }

  @Override
  public HeatingRate fastestCristobaliteRise(double millimetres) {
    return BurnoutRules.scaledRise(150, millimetres, 90, 100);
  }

  @Override
  public HeatingRate fastestQuartzRise() {
    return HeatingRate.ofKelvinsPerHour(200);
  }

  @Override
  public Origin wetRiseOrigin() {
    return MACHINE_MANUAL;
  }

  // ---- on the way up

  @Override
  public List<Rest> rests(double millimetres) {
    boolean large = BurnoutRules.isLarge(millimetres);
    Rest wax =
        new Rest(
            "wax out",
            new Reasoned<>(
                Temperature.ofCelsius(large ? 315 : 370),
                new Why(
                    large
                        ? "Large moulds rest at about 315 and 480 °C instead of 370 °C."
                        : "What is left of the pattern burns off; the gypsum shrinks from about"
                            + " 350 °C.",
                    large ? "315 °C" : "371 °C",
                    large ? CYCLES : WAX_RESTS)),
            new Reasoned<>(
                BurnoutRules.waxHold(millimetres),
                new Why(
                    "1 h at 63 mm, 2 h from 89 mm on, straight between.",
                    "1 to 2 h",
                    CYCLES_FITTED)));
    Rest settle =
        new Rest(
            "settle the gypsum",
            new Reasoned<>(
                Temperature.ofCelsius(480),
                new Why(
                    "The gypsum has shrunk and the core has caught up before quartz turns at 573"
                        + " °C.",
                    "482 °C",
                    CYCLES)),
            new Reasoned<>(
                Duration.ofHours(2), new Why("2 h for moulds of 100 mm and more.", "2 h", CYCLES)));
    return large ? List.of(wax, settle) : List.of(wax);
  }

  // ---- the top

  @Override
  public Temperature top() {
    return TOP;
  }

  @Override
  public Why topWhy() {
    return new Why(
        "Carbon burns from about 600 °C; the gypsum is safe to about 750 °C.",
        "700 to 735 °C",
        TOPS);
  }

  /** Carbon burns in air from about 600 °C. */
  @Override
  public Temperature leastTop() {
    return Temperature.ofCelsius(680);
  }

  /** 1450 °F, the ceiling of the trade. */
  @Override
  public Temperature ceiling() {
    return Temperature.ofCelsius(788);
  }

  @Override
  public String beyondCeiling() {
    return "the binder breaks down, and its sulphur gas spoils the castings";
  }

  @Override
  public Origin ceilingOrigin() {
    return Origin.read("a supplier's checklist for investment casting");
  }

  /** Above this, left-over carbon can turn the binder to sulphide. */
  @Override
  public Optional<Reasoned<Temperature>> topCaution() {
    return Optional.of(
        new Reasoned<>(
            Temperature.ofCelsius(750),
            new Why(
                "carbon that is left can turn the binder to sulphide: dark, rough, porous castings",
                "",
                Origin.read("abstract on the reduction of calcium sulphate by carbon monoxide"))));
  }

  @Override
  public Temperature topHoldFrom() {
    return Temperature.ofCelsius(690);
  }

  /**
   * Top hold of practice, D/30 in hours and 2 h at least; never under the time the core needs to
   * catch up plus an hour.
   */
  @Override
  public Duration topHold(double millimetres) {
    double hours = Math.max(2, millimetres / 30);
    return RoundNumbers.nearestQuarter(
        Math.max(hours, BurnoutRules.catchUpHours(millimetres, 115) + 1));
  }

  @Override
  public Why topHoldWhy() {
    return new Why(
        "An hour for each 30 mm of the thickest mould, 2 h at least.", "2 to 8 h", TOP_HOLDS);
  }

  // ---- the pour

  @Override
  public Optional<UsualMould> pourOf(String alloy) {
    return AlloyFamily.ofName(alloy).flatMap(UsualMould::of);
  }

  @Override
  public List<Caution> cautions() {
    return List.of();
  }
}
