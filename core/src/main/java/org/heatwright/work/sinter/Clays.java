package org.heatwright.work.sinter;

import java.time.Duration;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.heatwright.material.FixedPoints;
import org.heatwright.material.Material;
import org.heatwright.material.Origin;
import org.heatwright.mould.BodyMaterials;
import org.heatwright.units.HeatingRate;
import org.heatwright.units.Temperature;
import org.heatwright.work.sinter.ClayFacts.Binder;
import org.heatwright.work.sinter.ClayFacts.CurvePrior;
import org.heatwright.work.sinter.ClayFacts.Row;
import org.heatwright.work.sinter.ClayFacts.ShrinkageRange;
import org.heatwright.work.sinter.ClayFacts.Strength;

/**
 * Rules and numbers for each clay, in words in {@code docs/models/sintering.md}. Pages that were
 * read print °F; they are given here as whole °C.
 */
public final class Clays {

  /** How fast a small kiln brings a piece up, where nothing else is known. {@code estimate:} */
  static final HeatingRate USUAL_RATE = HeatingRate.ofKelvinsPerHour(1000);

  private static final Origin CLASS_PAGES =
      Origin.read("minimum tables on public class and retail pages on silver clay");

  private static final Origin TEACHER =
      Origin.read("firing temperatures and times for silver metal clay, a supplier and teacher");

  private static final Origin SILVER_Q =
      Origin.estimate(
          "curves between silver's published diffusion along grain boundaries and in the lattice, 80 to 190 kJ/mol; none of a clay was found");

  private static final Origin COPPER_Q =
      Origin.estimate(
          "curves between copper's published diffusion and sintering values, 105 to 230 kJ/mol; none of a clay was found");

  private static final Origin DENSITIES =
      Origin.estimate("no density of a fired clay was found: a wide range");

  private Clays() {}

  /** What is known of a clay. */
  public static ClayFacts of(Clay clay) {
    return Objects.requireNonNull(All.FACTS.get(clay));
  }

  /** Made once. */
  private static final class All {
    static final Map<Clay, ClayFacts> FACTS = facts();

    private All() {}

    private static Map<Clay, ClayFacts> facts() {
      Map<Clay, ClayFacts> facts = new EnumMap<>(Clay.class);
      for (Clay clay : Clay.values()) {
        facts.put(clay, made(clay));
      }
      return Collections.unmodifiableMap(facts);
    }
  }

  private static ClayFacts made(Clay clay) {
    return switch (clay) {
      case FINE_SILVER_LOW_FIRE ->
          usualSilver(
              clay,
              20,
              row(600, 30, Strength.LEAST, CLASS_PAGES),
              row(650, 20, Strength.LEAST, CLASS_PAGES),
              row(700, 10, Strength.LEAST, CLASS_PAGES));
      case FINE_SILVER ->
          usualSilver(
              clay,
              30,
              row(650, 30, Strength.LEAST, CLASS_PAGES),
              row(700, 15, Strength.LEAST, CLASS_PAGES),
              row(750, 10, Strength.LEAST, CLASS_PAGES),
              row(780, 5, Strength.LEAST, CLASS_PAGES));
      case FINE_SILVER_OLDER ->
          silver(
              clay,
              List.of(row(900, 120, Strength.BEST, Origin.practice())),
              new ShrinkageRange(0.25, 0.30, Origin.practice()),
              silverCurve(
                  SinterHeat.rampAndHold(USUAL_RATE, celsius(800), minutes(30)),
                  0.55,
                  0.82,
                  false));
      case STERLING -> sterling();
      case COPPER -> copper();
      case BRONZE ->
          bronze(
              clay,
              celsius(845),
              "10 % tin bronze begins to melt near 845 °C and slumps",
              Origin.memory("ASM Handbook vol. 3, copper and tin: solidus near 845 °C at 10 % tin"),
              15,
              845,
              List.of(
                  row(
                      830,
                      150,
                      Strength.BEST,
                      Origin.read(
                          "a bronze-clay firing guide, 832 to 843 °C for 2 to 3 h; kept under the"
                              + " solidus"))));
      case BRONZE_LOW_FIRE ->
          bronze(
              clay,
              celsius(815),
              "this blend fires at 793 °C and its melting point was not found",
              Origin.estimate("22 K above the one temperature a page names for a blend, 793 °C"),
              15,
              815,
              List.of(
                  row(
                      790,
                      150,
                      Strength.BEST,
                      Origin.read("firing pages on bronze clay, one blend at 793 °C"))));
    };
  }

  /**
   * Fine silver that shrinks little.
   *
   * @param minutesAt650 the weak firing of its curve
   * @param least firings of the class pages, coolest first
   */
  private static ClayFacts usualSilver(Clay clay, long minutesAt650, Row... least) {
    return silver(
        clay,
        Stream.concat(
                Arrays.stream(least),
                Stream.of(
                    row(900, 30, Strength.GOOD, TEACHER), row(900, 120, Strength.BEST, TEACHER)))
            .toList(),
        new ShrinkageRange(0.08, 0.15, Origin.practice()),
        silverCurve(
            SinterHeat.rampAndHold(USUAL_RATE, celsius(650), minutes(minutesAt650)),
            0.78,
            0.92,
            true));
  }

  private static ClayFacts silver(
      Clay clay, List<Row> rows, ShrinkageRange shrinkage, CurvePrior curve) {
    return new ClayFacts(
        clay,
        10_500,
        celsius(925),
        "fine silver melts at 962 °C, and a small kiln may overshoot by 11 K and read wrong besides",
        Origin.estimate(
            "37 K under the melting point (read: "
                + FixedPoints.ORIGIN.text()
                + "); a teacher's page says 927 °C"),
        0,
        FixedPoints.SILVER_CELSIUS,
        rows,
        new Binder(
            celsius(500),
            minutes(20),
            Optional.empty(),
            200,
            500,
            Origin.estimate("the binder of silver clay burns on the way up; 20 min if it is held")),
        shrinkage,
        Optional.of(curve),
        porous("silver"),
        0.5);
  }

  private static CurvePrior silverCurve(
      SinterHeat weak, double weakLow, double weakHigh, boolean strengthKnown) {
    return new CurvePrior(
        80e3,
        190e3,
        weak,
        weakLow,
        weakHigh,
        SinterHeat.rampAndHold(USUAL_RATE, celsius(900), minutes(120)),
        0.90,
        0.985,
        strengthKnown,
        SILVER_Q,
        DENSITIES);
  }

  private static ClayFacts sterling() {
    return new ClayFacts(
        Clay.STERLING,
        10_360,
        celsius(788),
        "sterling begins to melt from 788 °C by the lowest of three published values",
        Origin.read("a metals data page: solidus 788 °C; others say 796 and 802"),
        10,
        788,
        List.of(
            row(
                770,
                75,
                Strength.BEST,
                Origin.derived(
                    "as much as the 30 min at 815 °C of a sterling-clay test (read: a blog) at 80 to"
                        + " 190 kJ/mol, 45 to 75 min, but under the solidus"))),
        new Binder(
            celsius(540),
            minutes(30),
            Optional.empty(),
            200,
            540,
            Origin.read("a blog's sterling-clay test, 538 °C for 30 min in air")),
        new ShrinkageRange(
            0.10, 0.20, Origin.estimate("between fine silver and base-metal clays of practice")),
        Optional.of(
            new CurvePrior(
                80e3,
                190e3,
                SinterHeat.rampAndHold(USUAL_RATE, celsius(700), minutes(30)),
                0.62,
                0.88,
                SinterHeat.rampAndHold(USUAL_RATE, celsius(770), minutes(75)),
                0.80,
                0.97,
                false,
                Origin.estimate("taken from silver; with 7.5 % copper it is a guess"),
                DENSITIES)),
        porous("silver"),
        0.6);
  }

  private static ClayFacts copper() {
    return new ClayFacts(
        Clay.COPPER,
        8960,
        celsius(980),
        "nobody we read fires it above 954 °C, and copper with oxygen melts from 1066 °C",
        Origin.estimate("26 K above the hottest that was read, 954 °C"),
        0,
        1065,
        List.of(
            row(
                930,
                180,
                Strength.GOOD,
                Origin.read("firing pages on copper clay, 927 °C for 3 h")),
            row(
                950,
                210,
                Strength.BEST,
                Origin.read("an article on firing copper clay, 954 °C for 3.5 h"))),
        new Binder(
            celsius(290),
            minutes(15),
            Optional.of(HeatingRate.ofKelvinsPerHour(270)),
            200,
            290,
            Origin.read(
                "an article on firing copper clay: 500 an hour to 560, 15 min; taken as °F, which is"
                    + " an estimate")),
        new ShrinkageRange(0.10, 0.25, Origin.practice()),
        Optional.of(
            new CurvePrior(
                105e3,
                230e3,
                SinterHeat.rampAndHold(USUAL_RATE, celsius(850), minutes(60)),
                0.60,
                0.85,
                SinterHeat.rampAndHold(USUAL_RATE, celsius(930), minutes(180)),
                0.80,
                0.96,
                false,
                COPPER_Q,
                DENSITIES)),
        porous("copper"),
        0.7);
  }

  private static ClayFacts bronze(
      Clay clay,
      Temperature limit,
      String because,
      Origin origin,
      double spareKelvins,
      double meltsCelsius,
      List<Row> rows) {
    return new ClayFacts(
        clay,
        8800,
        limit,
        because,
        origin,
        spareKelvins,
        meltsCelsius,
        rows,
        new Binder(
            celsius(350),
            minutes(30),
            Optional.of(HeatingRate.ofKelvinsPerHour(270)),
            200,
            350,
            Origin.practice()),
        new ShrinkageRange(0.10, 0.25, Origin.practice()),
        // Some liquid may form: one Q and one curve do not hold.
        Optional.empty(),
        porous("copper"),
        0.7);
  }

  /** Powder that is half sintered conducts a fifth of the metal. {@code estimate:} */
  private static Material porous(String metal) {
    return BodyMaterials.named(metal).orElseThrow().material().scaled(0.2, 1);
  }

  private static Row row(double celsius, long minutes, Strength strength, Origin origin) {
    return new Row(celsius(celsius), minutes(minutes), strength, origin);
  }

  private static Temperature celsius(double celsius) {
    return Temperature.ofCelsius(celsius);
  }

  private static Duration minutes(long minutes) {
    return Duration.ofMinutes(minutes);
  }
}
