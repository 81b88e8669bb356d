package org.heatwright.work.heattreat;

import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.work.heattreat.Practice.After;
import org.heatwright.work.heattreat.Practice.Medium;

/**
 * Heats of practice by metal and treatment. Where two sources disagree, the range holds both. What
 * no source of ours tells is empty: then the person's own value or the supplier's data sheet is
 * needed. {@code docs/models/heat-treatment.md} tells them as a table.
 */
public final class Practices {

  /** Metal glows visibly in the dark from here. */
  public static final Temperature RED = Temperature.ofCelsius(525);

  private static final Origin RED_ORIGIN = Origin.memory("Draper 1847, first red at 525 °C");

  private static final Origin ANNEALING_ARTICLE =
      Origin.read(
          "a trade article on annealing: 677 °C (1250 °F) for 10 min, minutes, not hours; the"
              + " window about it is our estimate");

  private static final After ANY =
      new After(
          Medium.ANY,
          Optional.empty(),
          Optional.empty(),
          "water or air, it does not matter",
          Origin.practice());

  private static final After AIR =
      new After(
          Medium.AIR, Optional.empty(), Optional.empty(), "let it cool in air", Origin.practice());

  private static final After WATER_BELOW_RED =
      new After(
          Medium.WATER,
          Optional.empty(),
          Optional.of(RED),
          "let the red go, then water: from red heat it may crack, and the water spits",
          RED_ORIGIN);

  /** Red gold orders itself and turns brittle below about 410 °C. */
  private static final After WATER_ABOVE_ORDERING =
      new After(
          Medium.WATER,
          Optional.of(Temperature.ofCelsius(427)),
          Optional.of(RED),
          "red gold that cools slowly through 410 °C orders, hardens and may crack",
          Origin.read(
              "bench-forum posts on annealing gold: quench from above some 427 °C (800 °F)"));

  private static final After WHITE_AIR =
      new After(
          Medium.AIR,
          Optional.empty(),
          Optional.empty(),
          "nickel white gold cracks in water from red; some wait until it is below 482 °C and then"
              + " quench",
          Origin.read("a refiner's page (air) and a bench forum (below 482 °C)"));

  private static final After WATER_AT_ONCE =
      new After(
          Medium.WATER,
          Optional.of(Temperature.ofCelsius(650)),
          Optional.empty(),
          "what went into solution comes out again on the way down, and 650 °C keeps little of it",
          Origin.read("bench-forum posts on sterling hardening; the gate is our reading of them"));

  private static final After GOLD_WATER_AT_ONCE =
      new After(
          Medium.WATER,
          Optional.of(Temperature.ofCelsius(500)),
          Optional.empty(),
          "slow cooling hardens it unevenly before its time",
          Origin.estimate("well above the ageing range, 250 to 360 °C"));

  private Practices() {}

  /** How a metal is softened, where a source of ours tells. */
  public static Optional<Practice> anneal(TreatedMetal metal) {
    return switch (metal) {
      case FINE_SILVER -> some(300, 400, 500, 5, 5, 15, ANY, Origin.practice());
      case STERLING_925, GERMANIUM_SILVER_925 ->
          some(
              593,
              620,
              650,
              3,
              10,
              15,
              WATER_BELOW_RED,
              Origin.read(
                  "a refiner's page, 593 to 649 °C for a few minutes, and a silversmith's page, 648 °C;"
                      + (metal == TreatedMetal.STERLING_925
                          ? " the minutes are our estimate"
                          : " both for sterling without germanium")));
      case COPPER -> some(400, 500, 650, 5, 10, 30, ANY, Origin.practice());
      case BRASS -> some(450, 550, 600, 5, 15, 30, AIR, Origin.practice());
      case BRONZE -> some(500, 550, 600, 5, 15, 30, AIR, Origin.practice());
      case YELLOW_GOLD_14K, YELLOW_GOLD_18K ->
          some(
              640,
              660,
              700,
              10,
              15,
              30,
              WATER_BELOW_RED,
              Origin.read(
                  "a refiner's page, 649 °C for 10 to 30 min; a trade article on annealing, 677 °C"
                      + " for 10 min; the window about them is our estimate"));
      case YELLOW_GOLD_22K -> some(640, 660, 700, 5, 10, 15, ANY, ANNEALING_ARTICLE);
      case RED_GOLD_14K, RED_GOLD_18K ->
          some(640, 670, 700, 10, 10, 30, WATER_ABOVE_ORDERING, ANNEALING_ARTICLE);
      case WHITE_GOLD_NICKEL_14K, WHITE_GOLD_NICKEL_18K ->
          some(
              607,
              610,
              750,
              15,
              20,
              30,
              WHITE_AIR,
              Origin.read(
                  "a refiner's page, 607 °C for 20 min; others anneal at 700 to 750 °C (common"
                      + " practice): go up if it stays stiff"));
      case PALLADIUM_950, PLATINUM_950 ->
          some(
              927,
              950,
              1000,
              5,
              10,
              30,
              ANY,
              Origin.read(
                  "a trade article on annealing: above 927 °C (1700 °F); the top and the minutes are"
                      + " our estimate"));
      case WHITE_GOLD_PALLADIUM_14K, WHITE_GOLD_PALLADIUM_18K -> Optional.empty();
    };
  }

  /** The first heat of age hardening, where a source of ours tells. */
  public static Optional<Practice> solution(TreatedMetal metal) {
    return switch (metal) {
      case STERLING_925 ->
          some(
              700,
              745,
              760,
              30,
              30,
              60,
              WATER_AT_ONCE,
              Origin.read(
                  "a supplier's note, 700 to 730 °C for 30 to 60 min; bench-forum posts, 750 to 760 °C"
                      + " for 30 min; capped at 745 °C by us"));
      case GERMANIUM_SILVER_925 ->
          some(
              700,
              700,
              730,
              30,
              30,
              60,
              WATER_AT_ONCE,
              Origin.estimate(
                  "the cool end of sterling's; a bench forum only says that a solution heat makes"
                      + " ageing better"));
      case YELLOW_GOLD_14K ->
          some(
              640,
              660,
              700,
              10,
              20,
              30,
              GOLD_WATER_AT_ONCE,
              Origin.read(
                  "a refiner's page, 649 °C for 10 to 30 min; a consumer page, 676 °C, 30 min; the"
                      + " window about them is our estimate"));
      case YELLOW_GOLD_18K, RED_GOLD_18K ->
          some(640, 670, 700, 10, 15, 30, GOLD_WATER_AT_ONCE, ANNEALING_ARTICLE);
      default -> Optional.empty();
    };
  }

  /** The second heat of age hardening, or the only one, where a source of ours tells. */
  public static Optional<Practice> age(TreatedMetal metal) {
    return switch (metal) {
      case STERLING_925 ->
          some(
              280,
              300,
              340,
              30,
              60,
              60,
              ANY,
              Origin.read(
                  "a supplier's note, 300 °C for 30 to 60 min; bench-forum posts, 300 °C for 1 h. The"
                      + " window is our estimate: from 350 °C it softens, and cooler takes longer"));
      case GERMANIUM_SILVER_925 ->
          some(
              300,
              305,
              316,
              30,
              60,
              120,
              ANY,
              Origin.read("a bench-forum post, 300 to 316 °C; the minutes are our estimate"));
      case YELLOW_GOLD_14K ->
          some(
              343,
              350,
              360,
              15,
              30,
              30,
              ANY,
              Origin.read(
                  "a refiner's page, 360 °C up to 30 min; a consumer page, 343 °C, 30 min"));
      case YELLOW_GOLD_18K, RED_GOLD_18K -> some(250, 280, 300, 15, 30, 60, ANY, Origin.practice());
      default -> Optional.empty();
    };
  }

  /** How stresses are taken out without softening, where we know it. */
  public static Optional<Practice> stressRelief(TreatedMetal metal) {
    return switch (metal) {
      case BRASS ->
          some(
              250,
              260,
              300,
              30,
              60,
              60,
              AIR,
              Origin.memory(
                  "ASM Handbook vol. 4, stress relief of copper alloys: cartridge brass about 260 °C"
                      + " for 1 h; the range is our estimate"));
      case COPPER ->
          some(
              150,
              180,
              200,
              30,
              60,
              60,
              AIR,
              Origin.memory(
                  "ASM Handbook vol. 4, stress relief of copper alloys: copper about 180 °C for 1 h;"
                      + " the range is our estimate"));
      default -> Optional.empty();
    };
  }

  private static Optional<Practice> some(
      double low,
      double plan,
      double high,
      int least,
      int planMinutes,
      int most,
      After after,
      Origin origin) {
    return Optional.of(Practice.of(low, plan, high, least, planMinutes, most, after, origin));
  }
}
