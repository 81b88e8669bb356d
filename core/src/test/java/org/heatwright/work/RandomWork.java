package org.heatwright.work;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.random.RandomGenerator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.heatwright.kiln.Kiln;
import org.heatwright.mould.Investment;
import org.heatwright.mould.Mould;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.enamel.Look;
import org.heatwright.work.enamel.Oxide;
import org.heatwright.work.enamel.TestTile;

/** Work and kilns as they may come in, over and beyond what is usual. */
final class RandomWork {

  private static final List<String> ALLOYS =
      List.of(
          "sterling-925", "fine-silver", "yellow-gold-18k", "white-gold-14k", "bronze", "brass");

  private static final List<String> HOT_ALLOYS =
      List.of("platinum-950", "palladium-950", "white-gold-14k", "sterling-925");

  private final RandomGenerator random;

  RandomWork(RandomGenerator random) {
    this.random = random;
  }

  /** Making a kiln takes longer than composing for it: some that serve many works. */
  static List<Kiln> kilns(long seed) {
    return Stream.generate(new RandomWork(new SplittableRandom(seed))::kiln).limit(60).toList();
  }

  /**
   * How many of so many cases passed: each has a random beginning of its own, so that the same are
   * tried whatever the order.
   *
   * @param passes false for a case that is left out; throws where it fails
   */
  static long counted(int cases, long seed, Predicate<SplittableRandom> passes) {
    return IntStream.range(0, cases)
        .parallel()
        .filter(i -> passes.test(new SplittableRandom(seed * cases + i)))
        .count();
  }

  Kiln kiln() {
    double side = between(0.15, 0.6);
    return Scenarios.kiln(
        "Any",
        random.nextInt(4) == 0
            ? new org.heatwright.kiln.Chamber.Drum(side, between(0.15, 0.6))
            : Scenarios.box(side, between(0.15, 0.6), between(0.12, 0.6)),
        between(1000, 6000),
        between(690, 1300),
        Optional.empty(),
        random.nextBoolean() ? 3 : 0);
  }

  Work work() {
    return random.nextInt(3) == 0 ? enamel() : burnout();
  }

  BurnoutWork burnout() {
    List<PatternedMould> moulds = new ArrayList<>();
    int kinds = 1 + random.nextInt(3);
    for (int i = 0; i < kinds; i++) {
      moulds.add(mould(between(0.02, 0.16)));
    }
    return random.nextInt(4) == 0
        ? burnout(
            moulds,
            new Investment(Investment.Binder.PHOSPHATE, between(0.14, 0.28), between(0, 60)),
            sheet(800, 1100),
            HOT_ALLOYS)
        : burnout(
            moulds,
            new Investment(Investment.Binder.GYPSUM, between(0.36, 0.45), between(0, 60)),
            sheet(600, 900),
            ALLOYS);
  }

  private BurnoutWork burnout(
      List<PatternedMould> moulds, Investment investment, DataSheet sheet, List<String> alloys) {
    return new BurnoutWork(
        moulds,
        investment,
        sheet,
        new PouredMetal(
            alloys.get(random.nextInt(alloys.size())),
            random.nextInt(3) == 0
                ? Optional.of(Temperature.ofCelsius(Math.rint(between(300, 700))))
                : Optional.empty()),
        Optional.empty());
  }

  PatternedMould mould(double diameterMetres) {
    return new PatternedMould(
        new Mould(
            1 + random.nextInt(4),
            diameterMetres,
            between(0.03, 0.25),
            random.nextBoolean() ? 0 : 0.0015),
        random.nextInt(3) == 0 ? PatternedMould.Pattern.RESIN : PatternedMould.Pattern.WAX,
        random.nextBoolean() ? OptionalDouble.of(between(0.002, 0.4)) : OptionalDouble.empty());
  }

  EnamelWork enamel() {
    EnamelWork.Metal[] metals = EnamelWork.Metal.values();
    EnamelWork.Hardness[] hardnesses = EnamelWork.Hardness.values();
    EnamelWork work =
        new EnamelWork(
            metals[random.nextInt(metals.length)],
            between(0.0003, 0.005),
            1 + random.nextInt(40),
            between(0.01, 0.15),
            hardnesses[random.nextInt(hardnesses.length)],
            random.nextInt(4) == 0
                ? Optional.of(Temperature.ofCelsius(Math.rint(between(690, 1000))))
                : Optional.empty(),
            Duration.ofMinutes(1 + random.nextInt(600)),
            sheet(680, 950),
            Optional.empty(),
            EnamelBuild.unknown());
    // From numbers of its own, so that the works of before stay what they were.
    RandomWork more =
        new RandomWork(new java.util.SplittableRandom(Double.doubleToLongBits(work.sheetMetres())));
    return more.random.nextBoolean() ? work : work.withBuild(more.build());
  }

  private EnamelBuild build() {
    EnamelWork.Hardness[] hardnesses = EnamelWork.Hardness.values();
    EnamelCoat.Kind[] kinds = EnamelCoat.Kind.values();
    List<EnamelCoat> coats = new ArrayList<>();
    for (int i = random.nextInt(5); i > 0; i--) {
      coats.add(
          new EnamelCoat(
              kinds[random.nextInt(kinds.length)],
              random.nextBoolean()
                  ? Optional.of(hardnesses[random.nextInt(hardnesses.length)])
                  : Optional.empty(),
              1 + random.nextInt(6)));
    }
    List<TestTile> tiles = new ArrayList<>();
    for (int i = random.nextInt(8) - 5; i > 0; i--) {
      tiles.add(
          new TestTile(
              between(650, 950),
              between(5, 600),
              Look.values()[random.nextInt(Look.values().length)]));
    }
    return new EnamelBuild(
        random.nextBoolean() ? OptionalDouble.of(between(5e-5, 2e-3)) : OptionalDouble.empty(),
        random.nextBoolean()
            ? Optional.of(
                new EnamelBuild.Counter(
                    OptionalDouble.of(between(5e-5, 2e-3)),
                    random.nextBoolean() ? Optional.of(expansion()) : Optional.empty()))
            : Optional.empty(),
        random.nextBoolean() ? Optional.of(expansion()) : Optional.empty(),
        random.nextBoolean()
            ? Optional.of(Temperature.ofCelsius(between(500, 750)))
            : Optional.empty(),
        random.nextInt(3) == 0
            ? Optional.of(Temperature.ofCelsius(Math.rint(between(760, 1100))))
            : Optional.empty(),
        random.nextInt(3) == 0 ? OptionalDouble.of(between(0, 0.4)) : OptionalDouble.empty(),
        coats,
        tiles);
  }

  private EnamelBuild.Expansion expansion() {
    return random.nextBoolean()
        ? new EnamelBuild.Expansion.OfSheet(between(5e-6, 16e-6))
        : new EnamelBuild.Expansion.OfOxides(
            Map.of(Oxide.SIO2, 70.0, Oxide.NA2O, 20.0, Oxide.CAO, 10.0), random.nextBoolean());
  }

  private DataSheet sheet(double lowCelsius, double highCelsius) {
    return new DataSheet(
        maybe().map(x -> Temperature.ofCelsius(between(lowCelsius, highCelsius))),
        maybe().map(x -> Temperature.ofCelsius(between(80, 180))),
        maybe().map(x -> Duration.ofMinutes(random.nextInt(400))),
        maybe().map(x -> Temperature.ofCelsius(between(lowCelsius, highCelsius))),
        maybe().map(x -> Duration.ofMinutes(random.nextInt(600))),
        maybe().map(x -> HeatingRate.ofKelvinsPerHour(between(30, 400))),
        maybe().map(x -> HeatingRate.ofKelvinsPerHour(between(20, 250))),
        maybe().map(x -> Duration.ofMinutes(random.nextInt(200))));
  }

  private Optional<Boolean> maybe() {
    return random.nextInt(3) == 0 ? Optional.of(true) : Optional.empty();
  }

  double between(double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
