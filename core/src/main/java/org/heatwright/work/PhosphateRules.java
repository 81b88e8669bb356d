package org.heatwright.work;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.material.Origin;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.work.Draft.Why;
import org.heatwright.work.casting.AlloyFamily;
import org.heatwright.work.casting.UsualMould;

/**
 * Phosphate-bonded moulds, for platinum, palladium and whatever gypsum does not bear. Far less of
 * this is written down by anyone than for gypsum: it rests on common practice, and the maker's data
 * sheet matters the more.
 */
final class PhosphateRules implements BinderRules {

  private static final Origin TEXTBOOK =
      Origin.memory("Phillips' Science of Dental Materials: about 750 to 1030 °C");

  private static final Temperature THROUGH_CRISTOBALITE = Temperature.ofCelsius(280);

  @Override
  public String bonded() {
    return "phosphate-bonded";
  }

  // ---- water and ammonia

  @Override
  public Reasoned<Temperature> dry() {
    return new Reasoned<>(
        THROUGH_CRISTOBALITE,
        new Why(
            "Water and ammonia leave, wax runs out, and cristobalite turns: all at once, so slowly"
                + " and with a rest.",
            "250 to 300 °C",
            Origin.practice()));
  }

  @Override
  public TemperatureRange wet() {
    return TemperatureRange.ofCelsius(20, 280);
  }

  @Override
  public Duration dryHold(double millimetres, double kilnFactor) {
    return kilnFactor > 1 ? Duration.ofHours(2) : BurnoutRules.waxHold(millimetres);
  }

  @Override
  public Why dryHoldWhy() {
    return new Why(
        "Practice: 1 h at 63 mm to 2 h at 89 mm, or in a crowded kiln.",
        "1 to 2 h",
        Origin.practice());
  }

  /** The next ramp is a fast one. */
  @Override
  public boolean driesThrough() {
    return true;
  }

  @Override
  public Duration leastDryTime(double millimetres) {
    return Duration.ofHours(2);
  }

  @Override
  public Temperature dryUpTo() {
    return THROUGH_CRISTOBALITE.plus(TemperatureChange.ofKelvins(25));
  }

  // ---- rates

  @Override
  public Reasoned<HeatingRate> earlyRise(double millimetres) {
    return new Reasoned<>(
        BurnoutRules.scaledRise(
            100,
            millimetres,
            BurnoutRules.SMALL_MILLIMETRES,
            GypsumRules.LEAST_RISE_KELVINS_PER_HOUR),
        new Why(
            "Water and ammonia must find their way out: 100 °C/h for a mould of 65 mm, less with the"
                + " square of the diameter, never under 50 °C/h.",
            "up to 100 °C/h",
            Origin.practice()));
  }

  @Override
  public Reasoned<HeatingRate> lateRise(double millimetres) {
    return new Reasoned<>(
        HeatingRate.ofKelvinsPerHour(millimetres <= 75 ? 200 : 150),
        new Why(
            "Through quartz at 573 °C without cracks: 200 °C/h up to 75 mm, 150 °C/h beyond.",
            "150 to 300 °C/h",
            Origin.practice()));
  }

  @Override
  public HeatingRate fastestWetRise(double millimetres) {
    return BurnoutRules.scaledRise(100, millimetres, 90, 65);
  }

  @Override
  public HeatingRate fastestCristobaliteRise(double millimetres) {
    return fastestWetRise(millimetres);
  }

  @Override
  public HeatingRate fastestQuartzRise() {
    return HeatingRate.ofKelvinsPerHour(300);
  }

  @Override
  public Origin wetRiseOrigin() {
    return Origin.practice();
  }

  // ---- on the way up

  /** Only where a data sheet has the mould dry cooler than that. */
  @Override
  public List<Rest> rests(double millimetres) {
    return List.of(
        new Rest(
            "wax out", dry(), new Reasoned<>(BurnoutRules.waxHold(millimetres), dryHoldWhy())));
  }

  // ---- the top

  @Override
  public Temperature top() {
    return Temperature.ofCelsius(900);
  }

  @Override
  public Why topWhy() {
    return new Why(
        "Carbon out, and the phosphate bond has fired hard enough for hot metal.",
        "850 to 1000 °C",
        Origin.practice());
  }

  @Override
  public Temperature leastTop() {
    return Temperature.ofCelsius(850);
  }

  @Override
  public Temperature ceiling() {
    return Temperature.ofCelsius(1030);
  }

  @Override
  public String beyondCeiling() {
    return "no text that we know fires such a mould hotter";
  }

  @Override
  public Origin ceilingOrigin() {
    return TEXTBOOK;
  }

  @Override
  public Optional<Reasoned<Temperature>> topCaution() {
    return Optional.empty();
  }

  @Override
  public Temperature topHoldFrom() {
    return Temperature.ofCelsius(830);
  }

  /** 1 to 3 h by diameter; never under the time the core needs to catch up plus half an hour. */
  @Override
  public Duration topHold(double millimetres) {
    double hours = Math.min(3, Math.max(1, millimetres / 30));
    return RoundNumbers.nearestQuarter(
        Math.max(hours, BurnoutRules.catchUpHours(millimetres, 115) + 0.5));
  }

  @Override
  public Why topHoldWhy() {
    return new Why(
        "An hour for each 30 mm of the thickest mould, 1 to 3 h, or longer until its core has caught up.",
        "1 to 3 h",
        Origin.practice());
  }

  // ---- the pour

  @Override
  public Optional<UsualMould> pourOf(String alloy) {
    Optional<AlloyFamily> family = AlloyFamily.ofName(alloy);
    return family.filter(AlloyFamily::needsPhosphate).isPresent()
        ? Optional.of(
            new UsualMould(
                Temperature.ofCelsius(870),
                TemperatureRange.ofCelsius(850, 900),
                Origin.practice()))
        : family.flatMap(UsualMould::of);
  }

  @Override
  public List<Caution> cautions() {
    return List.of(
        new Caution(
            "ammonia",
            "Phosphate-bonded moulds give off ammonia below 300 °C: it stings eyes and lungs, so"
                + " extract it to the outdoors from the first minute.",
            Origin.practice()),
        new Caution(
            "thin-sources",
            "Rules for phosphate-bonded moulds rest on common practice alone: take the maker's data"
                + " sheet first, and put its numbers into the work file.",
            Origin.practice()),
        new Caution(
            "carbon-in-investment",
            "Do not pour platinum alloys that take up carbon or silicon into an investment that"
                + " contains carbon.",
            Origin.practice()));
  }
}
