package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Control;
import org.heatwright.kiln.Kiln;
import org.heatwright.kiln.Thermocouple;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.sensing.ThermocoupleType;
import org.heatwright.sensing.ToleranceClass;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.heattreat.Solidus;
import org.heatwright.work.heattreat.Treatment;
import org.heatwright.work.heattreat.Warming;
import org.heatwright.work.sinter.CarbonBox;

/** What limits a heat treatment in a kiln, and how its pieces follow the kiln. */
final class HeatTreatRules {

  /** A piece this near the target is at temperature, K. Our estimate. */
  static final double NEAR_KELVINS = 5;

  /** Sterling's solution heat is not planned hotter. Our estimate. */
  static final Temperature STERLING_SOLUTION_CAP = Temperature.ofCelsius(745);

  /** At and under this a solution heat of sterling gains little (read, bench-forum posts). */
  static final Temperature STERLING_GAINS_LITTLE = Temperature.ofCelsius(650);

  /** A joint must stay this far under its solder's flow, K. Our estimate. */
  private static final double SOLDER_MARGIN_KELVINS = 20;

  /** Film of still air in a kiln, W/(m² K). Our estimate; 5 to 12. */
  static final double KILN_FILM = 8;

  /** Film about a piece that is carried, W/(m² K). Our estimate; 8 at rest. */
  private static final double CARRIED_FILM = 15;

  static final double BLOCK_EMISSIVITY = 0.8;

  static final double BOX_EMISSIVITY = 0.8;

  /** Targets above get the quick ramp. */
  private static final double HIGH_HEAT_CELSIUS = 450;

  private static final double QUICK_KELVINS_PER_HOUR = 400;
  private static final double GENTLE_KELVINS_PER_HOUR = 150;

  private HeatTreatRules() {}

  /**
   * A temperature of the display not to plan beyond.
   *
   * @param limit by the display
   * @param words whose limit, with what is in it
   * @param origin where it comes from
   */
  record Cap(Temperature limit, String words, Origin origin) {}

  /** The lowest cap rules. */
  static Cap lowest(List<Cap> caps) {
    return caps.stream().min(Comparator.comparing(Cap::limit)).orElseThrow();
  }

  static Solidus solidus(HeatTreatWork work) {
    return work.own()
        .solidus()
        .map(t -> new Solidus(t, Origin.own("work file")))
        .orElseGet(() -> Solidus.of(work.metal()));
  }

  /**
   * The highest display at which the metal is still solid for sure: its solidus, less what the
   * couple may be off, as far as the kiln's description has it.
   */
  static Temperature solidByDisplay(HeatTreatWork work, Kiln kiln) {
    return trueByDisplay(solidus(work).temperature(), kiln);
  }

  /** The highest display at which the truth is for sure not above a temperature. */
  static Temperature trueByDisplay(Temperature limit, Kiln kiln) {
    return limit
        .plus(kiln.thermocouple().offset())
        .plus(TemperatureChange.ofKelvins(-coupleKelvins(kiln, limit)));
  }

  /** Every cap on the target, by the display. */
  static List<Cap> caps(HeatTreatWork work, Kiln kiln, TemperatureUnit unit) {
    List<Cap> caps = new ArrayList<>();
    caps.add(
        new Cap(
            kiln.limit(), "the limit of %s".formatted(kiln.name()), Origin.own("the kiln's file")));
    work.dataSheet()
        .max()
        .ifPresent(
            max -> caps.add(new Cap(max, "the data sheet's limit", Origin.own("data sheet"))));
    double overshoot = overshootKelvins(kiln);
    Solidus solidus = solidus(work);
    caps.add(
        new Cap(
            less(solidByDisplay(work, kiln), overshoot),
            "%s begins to melt at %s, the display may be %s off and the kiln may overshoot by %s"
                .formatted(
                    work.metal().words(),
                    Wording.of(solidus.temperature(), unit),
                    Wording.differenceUp(coupleKelvins(kiln, solidus.temperature()), unit),
                    Wording.differenceUp(overshoot, unit)),
            solidus.origin()));
    if (work.own().soldered()) {
      caps.add(solder(work, kiln, overshoot, unit));
    }
    return caps;
  }

  private static Cap solder(HeatTreatWork work, Kiln kiln, double overshoot, TemperatureUnit unit) {
    Optional<Temperature> flow = work.own().solderFlow();
    if (flow.isPresent()) {
      double couple = coupleKelvins(kiln, flow.get());
      return new Cap(
          less(
              flow.get().plus(kiln.thermocouple().offset()),
              SOLDER_MARGIN_KELVINS + couple + overshoot),
          "the solder flows at %s, less %s for the joint, %s for the display and %s for overshoot"
              .formatted(
                  Wording.of(flow.get(), unit),
                  Wording.differenceUp(SOLDER_MARGIN_KELVINS, unit),
                  Wording.differenceUp(couple, unit),
                  Wording.differenceUp(overshoot, unit)),
          Origin.own("work file"));
    }
    return work.metal().isSilver()
        ? new Cap(
            Temperature.ofCelsius(700),
            "730 °C is too hot for most soldered silver, and the solder's flow is not known here",
            Origin.read("bench-forum posts on hardening soldered sterling"))
        : new Cap(
            Temperature.ofCelsius(650),
            "the solder's flow is not known here",
            Origin.estimate("under the flow of most hard solders"));
  }

  /** How far a new couple of this kiln's class may be off, K. */
  static double coupleKelvins(Kiln kiln, Temperature at) {
    Thermocouple couple = kiln.thermocouple();
    ThermocoupleType type = ThermocoupleType.valueOf(String.valueOf(couple.type()));
    OptionalDouble kelvins =
        ToleranceClass.toleranceKelvin(
            type, couple.toleranceClass().orElse(ToleranceClass.CLASS_2), at);
    return kelvins.orElse(Math.max(2.5, 0.0075 * Math.abs(at.celsius())));
  }

  /**
   * How far a kiln may overshoot, before a forecast says it better: 10 K under a proportional
   * controller; the hysteresis and 15 K under an on-off one. Our estimate; the forecast's own
   * number is judged by the inspection.
   */
  static double overshootKelvins(Kiln kiln) {
    return kiln.control().kind() == Control.Kind.ON_OFF
        ? kiln.control().hysteresis().kelvins() + 15
        : 10;
  }

  static HeatingRate rate(HeatTreatWork work, Temperature target, TemperatureUnit unit) {
    double practice =
        target.celsius() > HIGH_HEAT_CELSIUS && !work.treatment().isLowHeat()
            ? QUICK_KELVINS_PER_HOUR
            : GENTLE_KELVINS_PER_HOUR;
    HeatingRate rate = HeatingRate.ofKelvinsPerHour(practice);
    HeatingRate slowest =
        work.dataSheet().fastestRise().filter(r -> r.kelvinsPerHour() < practice).orElse(rate);
    return RoundNumbers.rate(slowest, unit);
  }

  /**
   * How a piece follows the kiln: clean, at its thickest, with what it lies on or in. A block's
   * heat is taken as it is at the target, where steel takes most.
   */
  static Warming inKiln(HeatTreatWork work, Temperature target) {
    double piece =
        work.metal().kilogramsPerCubicMetre()
            * work.metal().joulesPerKilogramKelvin()
            * work.piece().thickestMetres();
    double clean = work.metal().cleanEmissivity();
    return switch (work.setting()) {
      case MESH -> new Warming(piece, 2 * clean, 2 * KILN_FILM, 0);
      case SHELF -> new Warming(piece, clean, KILN_FILM, 0);
      case BLOCK -> block(work, piece, target);
      case CARBON_BOX -> box(work, piece, target);
    };
  }

  /** Heated from above alone; the resistance within it as in {@link #box}. */
  private static Warming block(HeatTreatWork work, double piece, Temperature target) {
    Material steel = HeatTreatPieces.steel();
    double thick = work.settingMetres().orElseThrow();
    double joules =
        steel.densityKilogramsPerCubicMetre()
            * steel.heatCapacityJoulesPerKilogramKelvin().at(target.celsius())
            * thick;
    double inner =
        4
            / (Math.PI * Math.PI)
            * thick
            / steel.conductivityWattsPerMetreKelvin().at(target.celsius());
    return new Warming(piece + joules, BLOCK_EMISSIVITY, KILN_FILM, inner);
  }

  /**
   * Half the height of a box, heated from both faces. The first eigenvalue of a slab of
   * conductivity k with a film H obeys {@code 1/ζ² <= 4/π² + k/(H L)}, so the time is never too
   * short; the heat of the piece passes through all of the carbon, which takes most heat at the
   * target and conducts half of the way there as it does on average.
   */
  private static Warming box(HeatTreatWork work, double piece, Temperature target) {
    Material granules = CarbonBox.CARBON;
    double half = work.settingMetres().orElseThrow() / 2;
    double carbon =
        granules.densityKilogramsPerCubicMetre()
            * granules.heatCapacityJoulesPerKilogramKelvin().at(target.celsius())
            * half;
    double joules = carbon + piece / 2;
    double through = half / granules.conductivityWattsPerMetreKelvin().at(target.celsius() / 2);
    double inner = through * (4 / (Math.PI * Math.PI) * carbon + piece / 2) / joules;
    return new Warming(joules, BOX_EMISSIVITY, KILN_FILM, inner);
  }

  /**
   * Time in the air of the room from the kiln's temperature down to another: the fastest for the
   * thinnest part, scaled and carried; the slowest for the thickest, clean and at rest, s.
   */
  static double[] secondsInAir(
      HeatTreatWork work, Temperature from, Temperature to, Temperature room) {
    if (from.compareTo(to) <= 0) {
      return new double[] {0, 0};
    }
    double joules = work.metal().kilogramsPerCubicMetre() * work.metal().joulesPerKilogramKelvin();
    Warming fast =
        new Warming(
            joules * work.piece().thinnestMetres(),
            2 * work.metal().scaledEmissivity(),
            2 * CARRIED_FILM,
            0);
    Warming slow =
        new Warming(
            joules * work.piece().thickestMetres(),
            2 * work.metal().cleanEmissivity(),
            2 * KILN_FILM,
            0);
    return new double[] {
      fast.secondsBetween(from.celsius(), to.celsius(), room.celsius()),
      slow.secondsBetween(from.celsius(), to.celsius(), room.celsius())
    };
  }

  /**
   * Time at the end of the hold in which people take pieces out one after another: 5 min each at
   * the bench, half a minute each into water, 5 min to come to the kiln otherwise. Our estimate.
   */
  static Duration handling(HeatTreatWork work, boolean water) {
    if (work.treatment() == Treatment.KEUM_BOO
        || work.treatment() == Treatment.GRANULATION_PREHEAT
        || work.treatment() == Treatment.PREHEAT) {
      return Duration.ofMinutes(Math.min(120, 5L * work.pieces()));
    }
    return Duration.ofMinutes(water ? Math.min(15, 2 + (work.pieces() + 1) / 2) : 5);
  }

  static Temperature less(Temperature temperature, double kelvins) {
    return temperature.plus(TemperatureChange.ofKelvins(-kelvins));
  }
}
