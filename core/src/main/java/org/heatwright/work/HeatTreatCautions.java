package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.inspect.Wording;
import org.heatwright.kiln.Kiln;
import org.heatwright.material.Origin;
import org.heatwright.schedule.HourMinute;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.HeatTreatWork.Setting;
import org.heatwright.work.heattreat.CopperInSilver;
import org.heatwright.work.heattreat.Practice.After;
import org.heatwright.work.heattreat.Practice.Medium;
import org.heatwright.work.heattreat.SterlingHardness;
import org.heatwright.work.heattreat.SterlingHardness.Hardness;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;

/** What to know before a heat treatment, and how its pieces go from the kiln to water or air. */
final class HeatTreatCautions {

  /** Nobody gets from a kiln into water in less, s. Our estimate. */
  static final double QUICKEST_HAND_SECONDS = 3;

  private final HeatTreatWork work;
  private final Kiln kiln;
  private final TemperatureUnit unit;
  private final HeatTreatHeat heat;
  private final Temperature target;

  HeatTreatCautions(
      HeatTreatWork work, Kiln kiln, TemperatureUnit unit, HeatTreatHeat heat, Temperature target) {
    this.work = work;
    this.kiln = kiln;
    this.unit = unit;
    this.heat = heat;
    this.target = target;
  }

  /**
   * The way from the kiln into water or air.
   *
   * @param what what to do, short
   * @param why why then
   */
  record Way(String what, String why) {}

  /** How long the piece lags behind when the kiln arrives, s. */
  static double lagSeconds(HeatTreatWork work, Kiln kiln, Temperature target, HeatingRate rate) {
    double room = Math.min(kiln.room().celsius(), target.celsius());
    return HeatTreatRules.inKiln(work, target)
        .secondsToArrive(
            room, target.celsius(), rate.kelvinsPerHour() / 3600, HeatTreatRules.NEAR_KELVINS);
  }

  /** What hardness comes out when all goes as planned, where our sources tell any. */
  static Optional<Hardness> expected(HeatTreatWork work, Temperature target, Duration soak) {
    if (work.metal() != TreatedMetal.STERLING_925) {
      return Optional.empty();
    }
    double near = HeatTreatRules.NEAR_KELVINS;
    if (work.isSolution()) {
      return Optional.of(
          SterlingHardness.expected(
              target.celsius() - near,
              target.celsius() + near,
              60,
              60,
              SterlingHardness.AGES_AT_CELSIUS));
    }
    if (!work.isAgeing()) {
      return work.treatment() == Treatment.ANNEAL
          ? Optional.of(SterlingHardness.BEFORE)
          : Optional.empty();
    }
    double minutes = soak.toMinutes();
    double[] solution = solutionCelsius(work);
    return Optional.of(
        SterlingHardness.expected(
            solution[0], solution[1], minutes, minutes, target.celsius() + near));
  }

  /**
   * The solution heat that pieces to be aged have had, coolest and hottest, °C: the person's, else
   * what we plan; without a solution heat somewhere between none and a casting's or an annealing's.
   */
  static double[] solutionCelsius(HeatTreatWork work) {
    double near = HeatTreatRules.NEAR_KELVINS;
    if (work.own().solution().isPresent()) {
      double celsius = work.own().solution().get().celsius();
      return new double[] {celsius - near, celsius + near};
    }
    if (work.phase().isEmpty()) {
      return new double[] {20, HeatTreatRules.STERLING_GAINS_LITTLE.celsius()};
    }
    double planned =
        work.own().soldered() && work.own().solderFlow().isEmpty()
            ? 700
            : HeatTreatRules.STERLING_SOLUTION_CAP.celsius() - near;
    return new double[] {planned - near, planned + near};
  }

  /** How the pieces leave the kiln, where it matters. */
  Optional<Way> way() {
    After after = heat.after();
    if (work.setting() == Setting.CARBON_BOX) {
      return Optional.of(
          new Way(
              "box out, shut, to cool outdoors",
              "Opened hot, the carbon burns and gives carbon monoxide."));
    }
    return switch (after.medium()) {
      case ANY -> Optional.empty();
      case AIR -> Optional.of(new Way("out of the kiln, cool in air", sentence(after.because())));
      case WATER -> Optional.of(water(after));
    };
  }

  private Way water(After after) {
    Temperature room = kiln.room();
    Optional<double[]> red =
        after
            .below()
            .filter(t -> t.compareTo(target) < 0)
            .map(t -> HeatTreatRules.secondsInAir(work, target, t, room));
    Optional<double[]> gate =
        after
            .above()
            .filter(t -> t.compareTo(target) < 0)
            .map(t -> HeatTreatRules.secondsInAir(work, target, t, room));
    if (gate.isEmpty()) {
      return new Way(
          "out of the kiln, let the red go, then into water",
          "%s. In air that takes %s."
              .formatted(
                  Wording.capital(after.because()),
                  red.map(HeatTreatCautions::span).orElse("no time")));
    }
    return new Way(
        red.isPresent()
            ? "out of the kiln, let the red go, into water within %s"
                .formatted(seconds(gate.get()[0]))
            : "out of the kiln and into water within %s".formatted(seconds(gate.get()[0])),
        "It must still be above %s: the thinnest part is there for %s in air%s. %s."
            .formatted(
                Wording.of(after.above().orElseThrow(), unit),
                span(gate.get()),
                red.map(r -> ", and red for %s".formatted(span(r))).orElse(""),
                Wording.capital(after.because())));
  }

  /** The least time that a piece keeps above the gate, s; empty where there is no gate. */
  private Optional<Double> transferSeconds() {
    return heat.after().medium() == Medium.WATER
        ? heat.after()
            .above()
            .map(gate -> HeatTreatRules.secondsInAir(work, target, gate, kiln.room())[0])
        : Optional.empty();
  }

  List<Caution> all(HeatTreatRules.Cap cap) {
    List<Caution> cautions = new ArrayList<>();
    otherHeat(cautions);
    hardness(cautions);
    outsidePractice(cautions);
    transferSeconds()
        .filter(s -> s < QUICKEST_HAND_SECONDS)
        .ifPresent(
            s ->
                cautions.add(
                    new Caution(
                        "transfer-too-short",
                        "The thinnest part is under the gate after %s in air, quicker than a hand: take it out on its hot block or tray, with the water beside the door."
                            .formatted(seconds(s)),
                        Origin.derived("radiation and moved air from both faces"))));
    solder(cautions, cap);
    quench(cautions);
    surface(cautions);
    if (work.setting() == Setting.BLOCK) {
      cautions.add(
          new Caution(
              "hot-block",
              "The block stays hot for an hour after the pieces: mark it, and never put it in water.",
              Origin.practice()));
    }
    if (work.setting() == Setting.CARBON_BOX) {
      cautions.add(
          new Caution(
              "carbon-monoxide",
              "Hot carbon gives carbon monoxide: fire with extraction, open the box cold or outdoors.",
              Origin.practice()));
    }
    lowHeat(cautions);
    if (target.celsius() >= 600) {
      cautions.add(Cautions.hotWork(600, 30));
    }
    cautions.addAll(Cautions.always());
    return cautions;
  }

  /** Solution and ageing are two firings: each names the other. */
  private void otherHeat(List<Caution> cautions) {
    if (work.isSolution()) {
      Optional<HeatTreatHeat> other = other();
      cautions.add(
          new Caution(
              "second-heat",
              "First of two firings: after the water comes the ageing%s (phase: age). Solder before, never after: soldering undoes it."
                  .formatted(other.map(h -> ", " + briefly(h)).orElse("")),
              Origin.read("a mirror page and a bench forum on hardening sterling")));
    } else if (work.phase().isPresent()) {
      cautions.add(
          new Caution(
              "first-heat",
              "Second of two firings: it hardens only what comes from the solution heat%s and was in water%s. Later soldering or annealing undoes it."
                  .formatted(
                      other().map(h -> ", " + briefly(h) + ",").orElse(""),
                      solutionTransfer().map(s -> " within " + s).orElse(" at once")),
              Origin.read("a mirror page and a bench forum on hardening sterling")));
    } else if (work.isAgeing() && work.metal() == TreatedMetal.STERLING_925) {
      cautions.add(
          new Caution(
              "no-solution-heat",
              "Without a solution heat and water before it, sterling gains little by ageing.",
              Origin.read("bench-forum posts on sterling hardening")));
    }
  }

  private Optional<HeatTreatHeat> other() {
    HeatTreatWork twin = twin();
    return HeatTreatHeat.practice(twin).isPresent()
        ? Optional.of(HeatTreatHeat.of(twin, unit))
        : Optional.empty();
  }

  /** The same pieces in the other of the two heats, by practice. */
  private HeatTreatWork twin() {
    return new HeatTreatWork(
        work.treatment(),
        Optional.of(work.phase().orElseThrow().other()),
        work.metal(),
        work.piece(),
        work.pieces(),
        work.setting(),
        work.settingMetres(),
        HeatTreatWork.Own.none(),
        DataSheet.none(),
        Optional.empty());
  }

  /** How quickly the pieces had to be in water after their solution heat. */
  private Optional<String> solutionTransfer() {
    return other()
        .flatMap(
            solution ->
                solution
                    .after()
                    .above()
                    .map(
                        gate ->
                            seconds(
                                HeatTreatRules.secondsInAir(
                                    work,
                                    RoundNumbers.lower(
                                        solution.plan(), HeatTreatRules.STERLING_SOLUTION_CAP),
                                    gate,
                                    kiln.room())[0])));
  }

  private String briefly(HeatTreatHeat of) {
    return "%s for %s".formatted(Wording.of(of.plan(), unit), HourMinute.words(of.soak()));
  }

  private void hardness(List<Caution> cautions) {
    Optional<Hardness> expected = expected(work, target, heat.soak());
    if (expected.isPresent() && (work.isAgeing() || work.isSolution())) {
      String dissolved =
          work.isSolution() && target.compareTo(CopperInSilver.EUTECTIC) < 0
              ? CopperInSilver.dissolvedShareOfSterling(target) == 1
                  ? ", because all of its copper can dissolve"
                  : ", because no more than %.0f %% of its copper can dissolve"
                      .formatted(100 * CopperInSilver.dissolvedShareOfSterling(target))
              : "";
      cautions.add(
          new Caution(
              "hardness-range",
              "At just these temperatures and times %.0f to %.0f HV come of both heats, from 60 to 70%s; what the kiln makes of it stands with what happens in the piece. Our sources disagree: try a strip of the same sheet with the pieces."
                  .formatted(expected.get().low(), expected.get().high(), dissolved),
              SterlingHardness.ORIGIN));
    } else if (expected.isEmpty() && (work.isAgeing() || work.isSolution())) {
      cautions.add(
          new Caution(
              "hardness-unknown",
              "Our sources tell no hardness for %s: ask the supplier, and try a strip of the same metal before the pieces."
                  .formatted(work.metal().words()),
              Origin.estimate("nothing found")));
    }
  }

  private void outsidePractice(List<Caution> cautions) {
    Optional<Temperature> high = HeatTreatHeat.practice(work).map(p -> p.high());
    Optional<Temperature> low = HeatTreatHeat.practice(work).map(p -> p.low());
    if (high.isPresent() && target.compareTo(high.get()) > 0) {
      cautions.add(
          new Caution(
              "above-practice",
              "%s lies above what practice uses for %s, up to %s: %s."
                  .formatted(
                      Wording.of(target, unit),
                      work.words(),
                      Wording.of(high.get(), unit),
                      heat.beyond()),
              heat.windowOrigin()));
    } else if (low.isPresent()
        && target.compareTo(HeatTreatRules.less(low.get(), HeatTreatRules.NEAR_KELVINS)) < 0) {
      cautions.add(
          new Caution(
              "below-practice",
              "%s lies below what practice uses for %s, from %s: %s."
                  .formatted(
                      Wording.of(target, unit),
                      work.words(),
                      Wording.of(low.get(), unit),
                      heat.below()),
              heat.windowOrigin()));
    }
  }

  private void solder(List<Caution> cautions, HeatTreatRules.Cap cap) {
    if (!work.own().soldered()) {
      return;
    }
    boolean rules = heat.plan().compareTo(cap.limit()) > 0;
    if (rules || target.celsius() > 500) {
      cautions.add(
          new Caution(
              "soldered-joints",
              "Soldered joints: prop the pieces so that nothing hangs on a joint%s."
                  .formatted(
                      work.own().solderFlow().isEmpty()
                          ? ", and give the solder's flow temperature if you know it"
                          : ""),
              cap.origin()));
    }
  }

  private void surface(List<Caution> cautions) {
    boolean hot = target.celsius() >= 350;
    if (work.metal() == TreatedMetal.STERLING_925 && hot && work.setting() != Setting.CARBON_BOX) {
      cautions.add(
          new Caution(
              "fire-stain",
              "Air stains sterling below its skin: coat it with flux or fire-stain paint, or use a carbon box where no quick water is needed.",
              Origin.practice()));
    } else if (work.metal().oxidises() && hot) {
      cautions.add(
          new Caution(
              "scale",
              "%s darkens or scales in hot air: coat it, and pickle afterwards."
                  .formatted(Wording.capital(work.metal().words())),
              Origin.practice()));
    }
    if (work.metal() == TreatedMetal.BRASS && target.celsius() >= 400) {
      cautions.add(
          new Caution(
              "zinc-fume",
              "Hot brass gives off zinc, whose fume brings fever: stay within the plan and fire with extraction.",
              Origin.practice()));
    }
    if (work.metal().isRedGold() && work.treatment() == Treatment.STRESS_RELIEF) {
      cautions.add(
          new Caution(
              "red-gold-orders",
              "Red gold orders and hardens between about 250 and 410 °C.",
              Origin.read("bench-forum posts on annealing gold")));
    }
  }

  private void quench(List<Caution> cautions) {
    if (heat.after().medium() == Medium.WATER && work.setting() != Setting.CARBON_BOX) {
      cautions.add(
          new Caution(
              "quench",
              "Water throws steam and drops: face shield, long tongs, a metal bucket; hollow pieces with a hole upwards, nothing with stones or enamel.",
              Origin.practice()));
    }
  }

  private void lowHeat(List<Caution> cautions) {
    switch (work.treatment()) {
      case KEUM_BOO ->
          cautions.add(
              new Caution(
                  "burnish-at-once",
                  "The kiln only preheats: burnish the foil at once on a hot plate or the hot block; sterling needs a fine-silver skin first.",
                  Origin.read("an encyclopaedia on keum-boo")));
      case GRANULATION_PREHEAT ->
          cautions.add(
              new Caution(
                  "torch-fuses",
                  "The kiln only preheats, the torch does the fusing: a kiln's display is not good enough for the last 11 K.",
                  Origin.read("a bench archive on silver granulation")));
      case PATINA_BAKE ->
          cautions.add(
              new Caution(
                  "bake-fumes",
                  "Patinas, waxes and lacquers give fumes that harm and may catch fire: extraction, no solvent left wet, nobody downwind.",
                  Origin.practice()));
      case DRY ->
          cautions.add(
              new Caution(
                  "steam-way-out",
                  "Leave the vent open: the damp must get out.",
                  Origin.practice()));
      default -> {}
    }
    if (target.celsius() < 400 && work.setting() != Setting.BLOCK) {
      cautions.add(
          new Caution(
              "low-kiln",
              "Small kilns swing widely at low heat: a heavy steel block under the pieces evens it out.",
              Origin.estimate("and practice")));
    }
  }

  // ---- words

  /** Whole seconds or minutes, rounded down: "3 s", "2 min"; "less than 1 s". */
  static String seconds(double seconds) {
    return seconds < 1
        ? "less than 1 s"
        : seconds < 120
            ? "%.0f s".formatted(Math.floor(seconds))
            : "%.0f min".formatted(Math.floor(seconds / 60));
  }

  private static String span(double[] seconds) {
    return "%s to %s".formatted(seconds(seconds[0]), seconds(seconds[1]));
  }

  private static String sentence(String clause) {
    return Wording.capital(clause) + ".";
  }
}
