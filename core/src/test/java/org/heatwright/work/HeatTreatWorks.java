package org.heatwright.work;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.random.RandomGenerator;
import org.heatwright.inspect.TemperatureRange;
import org.heatwright.units.Temperature;
import org.heatwright.work.HeatTreatWork.Own;
import org.heatwright.work.HeatTreatWork.Phase;
import org.heatwright.work.HeatTreatWork.Piece;
import org.heatwright.work.HeatTreatWork.Setting;
import org.heatwright.work.heattreat.TreatedMetal;
import org.heatwright.work.heattreat.Treatment;

/** Heat treatments for tests, usual and random. */
final class HeatTreatWorks {

  private HeatTreatWorks() {}

  static HeatTreatWork of(Treatment treatment, TreatedMetal metal) {
    return of(treatment, Optional.empty(), metal, Own.none());
  }

  static HeatTreatWork of(Treatment treatment, TreatedMetal metal, Own own) {
    return of(treatment, Optional.empty(), metal, own);
  }

  static HeatTreatWork solution(TreatedMetal metal, Own own) {
    return of(Treatment.SOLUTION_AND_AGE, Optional.of(Phase.SOLUTION), metal, own);
  }

  static HeatTreatWork age(TreatedMetal metal, Own own) {
    return of(Treatment.SOLUTION_AND_AGE, Optional.of(Phase.AGE), metal, own);
  }

  private static HeatTreatWork of(
      Treatment treatment, Optional<Phase> phase, TreatedMetal metal, Own own) {
    return new HeatTreatWork(
        treatment,
        phase,
        metal,
        new Piece(0.002, 0.001, 0.008),
        4,
        Setting.MESH,
        OptionalDouble.empty(),
        own,
        DataSheet.none(),
        Optional.empty());
  }

  static HeatTreatWork with(HeatTreatWork work, Piece piece) {
    return new HeatTreatWork(
        work.treatment(),
        work.phase(),
        work.metal(),
        piece,
        work.pieces(),
        work.setting(),
        work.settingMetres(),
        work.own(),
        work.dataSheet(),
        work.readyBy());
  }

  static HeatTreatWork with(HeatTreatWork work, Setting setting, double metres) {
    return new HeatTreatWork(
        work.treatment(),
        work.phase(),
        work.metal(),
        work.piece(),
        work.pieces(),
        setting,
        metres > 0 ? OptionalDouble.of(metres) : OptionalDouble.empty(),
        work.own(),
        work.dataSheet(),
        work.readyBy());
  }

  static HeatTreatWork with(HeatTreatWork work, DataSheet sheet) {
    return new HeatTreatWork(
        work.treatment(),
        work.phase(),
        work.metal(),
        work.piece(),
        work.pieces(),
        work.setting(),
        work.settingMetres(),
        work.own(),
        sheet,
        work.readyBy());
  }

  static HeatTreatWork random(RandomGenerator random) {
    Treatment treatment = pick(random, Treatment.values());
    double thick = random.nextDouble(0.0002, 0.02);
    Setting setting = pick(random, Setting.values());
    boolean under = setting == Setting.BLOCK || setting == Setting.CARBON_BOX;
    return new HeatTreatWork(
        treatment,
        treatment == Treatment.SOLUTION_AND_AGE
            ? Optional.of(pick(random, Phase.values()))
            : Optional.empty(),
        pick(random, TreatedMetal.values()),
        new Piece(thick, thick * random.nextDouble(0.5, 1), random.nextDouble(0.0005, 0.2)),
        1 + random.nextInt(40),
        setting,
        under ? OptionalDouble.of(random.nextDouble(0.003, 0.1)) : OptionalDouble.empty(),
        own(random),
        random.nextInt(5) == 0
            ? DataSheet.ofMax(Temperature.ofCelsius(Math.rint(random.nextDouble(150, 900))))
            : DataSheet.none(),
        Optional.empty());
  }

  private static Own own(RandomGenerator random) {
    Own own = Own.none();
    if (random.nextInt(4) == 0) {
      own =
          own.withTarget(
              Temperature.ofCelsius(Math.rint(random.nextDouble(60, 1000))),
              Duration.ofMinutes(1 + random.nextInt(180)));
    }
    if (random.nextInt(6) == 0) {
      double low = Math.rint(random.nextDouble(40, 800));
      own =
          own.withWindow(
              TemperatureRange.ofCelsius(low, low + Math.rint(random.nextDouble(2, 150))));
    }
    if (random.nextInt(6) == 0) {
      own = own.withSolidus(Temperature.ofCelsius(Math.rint(random.nextDouble(600, 950))));
    }
    if (random.nextInt(3) == 0) {
      own =
          own.withSolder(
              random.nextBoolean()
                  ? Optional.of(Temperature.ofCelsius(Math.rint(random.nextDouble(600, 800))))
                  : Optional.empty());
    }
    return own;
  }

  private static <T> T pick(RandomGenerator random, T[] values) {
    return values[random.nextInt(values.length)];
  }
}
