package org.heatwright.work.heattreat;

import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;

/**
 * A window of temperature to keep a piece in.
 *
 * @param low cooler does not do it
 * @param high hotter does harm
 * @param plan what we plan
 * @param minutes how long in the window, as planned
 * @param beyond what happens above, a clause
 * @param below what happens below, a clause
 * @param origin where it comes from
 */
public record LowHeat(
    Temperature low,
    Temperature high,
    Temperature plan,
    int minutes,
    String beyond,
    String below,
    Origin origin) {

  public LowHeat {
    if (low.compareTo(plan) > 0 || plan.compareTo(high) > 0 || minutes < 0) {
      throw new IllegalArgumentException("The plan must lie within the window.");
    }
  }

  /** The window of practice for a low heat on a metal, where we know one. */
  public static Optional<LowHeat> of(Treatment treatment, TreatedMetal metal) {
    return switch (treatment) {
      case KEUM_BOO -> metal.isSilver() ? Optional.of(keumBoo()) : Optional.empty();
      case GRANULATION_PREHEAT -> granulation(metal);
      case PATINA_BAKE ->
          window(
              80,
              120,
              200,
              30,
              "patinas and waxes change colour or smoke",
              "it stays soft or damp",
              Origin.estimate(
                  "under 200 °C by practice; the maker of the patina or wax goes first"));
      case DRY ->
          window(
              40,
              80,
              95,
              60,
              "water boils and lifts what it sits under",
              "it takes hours longer",
              Origin.estimate(
                  "under the boiling point of water, with room for a display that is off"));
      default -> Optional.empty();
    };
  }

  private static LowHeat keumBoo() {
    return window(
            260,
            315,
            370,
            10,
            "the foil may sink into the silver and lose its colour",
            "the foil does not bond",
            Origin.read(
                "an encyclopaedia, 260 to 370 °C at the surface; many work nearer 350 to 450 °C on a"
                    + " hotplate (common practice)"))
        .orElseThrow();
  }

  private static Optional<LowHeat> granulation(TreatedMetal metal) {
    return switch (metal) {
      case FINE_SILVER ->
          window(
              700,
              780,
              850,
              10,
              "granules and ground may flow before the torch is there: silver fuses within some 11 K"
                  + " of melting, which is less than a kiln's display is worth",
              "the torch takes longer",
              Origin.estimate("preheat only; the 11 K (20 °F) were read in a bench archive"));
      case YELLOW_GOLD_22K ->
          window(
              850,
              870,
              900,
              10,
              "the ground may flow",
              "the copper under the granules does not diffuse",
              Origin.memory("Wolters, The ancient craft of granulation, Gold Bulletin 1981"));
      default -> Optional.empty();
    };
  }

  private static Optional<LowHeat> window(
      double low,
      double plan,
      double high,
      int minutes,
      String beyond,
      String below,
      Origin origin) {
    return Optional.of(
        new LowHeat(
            Temperature.ofCelsius(low),
            Temperature.ofCelsius(high),
            Temperature.ofCelsius(plan),
            minutes,
            beyond,
            below,
            origin));
  }
}
