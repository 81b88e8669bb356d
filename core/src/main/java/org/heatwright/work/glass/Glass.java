package org.heatwright.work.glass;

import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;
import org.heatwright.material.Viscosity;
import org.heatwright.units.Temperature;

/**
 * A glass by what its maker says of it, and by its family where the maker says nothing. The number
 * for its expansion does not tell its annealing point: two glasses of one number may differ by tens
 * of degrees, so without a maker's figure the annealing point stays a range.
 *
 * @param family what sort of glass it is
 * @param annealPoint the maker's annealing point (10^13 poise)
 * @param strainPoint the maker's strain point (10^14.5 poise), below the annealing point
 * @param softeningPoint the maker's softening point (10^7.6 poise), above the annealing point
 * @param expansion the maker's expansion, 1/K over 20 to 300 °C; the family's where empty
 */
public record Glass(
    Family family,
    Optional<Temperature> annealPoint,
    Optional<Temperature> strainPoint,
    Optional<Temperature> softeningPoint,
    Optional<Expansion> expansion) {

  /** From a family's annealing point down to its strain point, K: 548 and 511 °C of one float. */
  static final double STRAIN_BELOW_ANNEAL_KELVINS = 37;

  /** How far a maker's own annealing point may be off for the lot and kiln at hand, K. */
  private static final double OWN_SPREAD_KELVINS = 8;

  /** The standard float's fit meets a published float's points within so much, K. */
  private static final double FLOAT_SPREAD_KELVINS = 6;

  /** What sort of glass it is. */
  public enum Family {
    /** Window glass made by floating. */
    FLOAT("float glass"),
    /** Soft glass in many colours, sold for fusing. */
    SOFT_ART("soft art glass"),
    /** Nobody knows: a bottle, a gift, a scrap. */
    UNKNOWN("unknown glass");

    private final String words;

    Family(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /** Linear expansion over 20 to 300 °C. */
  public record Expansion(double perKelvin) {
    public Expansion {
      if (!(perKelvin >= 2e-6 && perKelvin <= 16e-6)) {
        throw new IllegalArgumentException(
            "The glass's expansion (%s 1/K) must be 2e-6 to 16e-6, 20 to 160 in the trade's numbers."
                .formatted(perKelvin));
      }
    }
  }

  /**
   * Temperatures it may be, with the one to use where only one can be.
   *
   * @param low °C
   * @param usual °C, between
   * @param high °C
   * @param origin where they come from
   */
  public record Span(Temperature low, Temperature usual, Temperature high, Origin origin) {
    static Span ofCelsius(double low, double usual, double high, Origin origin) {
      return new Span(
          Temperature.ofCelsius(low),
          Temperature.ofCelsius(usual),
          Temperature.ofCelsius(high),
          origin);
    }
  }

  /** The three viscosities a glass may have: soft, usual, stiff. */
  public record Viscosities(Viscosity soft, Viscosity usual, Viscosity stiff) {}

  public Glass {
    Objects.requireNonNull(family, "family");
    Objects.requireNonNull(expansion, "expansion");
    requireBetween("annealing", annealPoint, 380, 720);
    requireBetween("strain", strainPoint, 330, 690);
    requireBetween("softening", softeningPoint, 500, 900);
    if (annealPoint.isEmpty() && (strainPoint.isPresent() || softeningPoint.isPresent())) {
      throw new IllegalArgumentException(
          "A strain or softening point needs the annealing point beside it.");
    }
    annealPoint.ifPresent(
        anneal -> {
          strainPoint.ifPresent(
              strain -> requireGap("strain", anneal.minus(strain).kelvins(), 10, 80, "under"));
          softeningPoint.ifPresent(
              soft -> requireGap("softening", soft.minus(anneal).kelvins(), 80, 300, "over"));
        });
  }

  private static void requireBetween(
      String name, Optional<Temperature> point, double lowCelsius, double highCelsius) {
    point.ifPresent(
        t -> {
          if (!(t.celsius() >= lowCelsius && t.celsius() <= highCelsius)) {
            throw new IllegalArgumentException(
                "The %s point (%.0f °C) must be %.0f to %.0f °C."
                    .formatted(name, t.celsius(), lowCelsius, highCelsius));
          }
        });
  }

  private static void requireGap(
      String name, double kelvins, double least, double most, String side) {
    if (!(kelvins >= least && kelvins <= most)) {
      throw new IllegalArgumentException(
          "The %s point must lie %.0f to %.0f K %s the annealing point, not %.0f K."
              .formatted(name, least, most, side, kelvins));
    }
  }

  /** A glass of which only the family is known. */
  public static Glass of(Family family) {
    return new Glass(
        family, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
  }

  public Glass withAnnealPoint(Temperature point) {
    return new Glass(family, Optional.of(point), strainPoint, softeningPoint, expansion);
  }

  /** Where its annealing point lies: the maker's, else the range of its family. */
  public Span anneal() {
    if (annealPoint.isPresent()) {
      double celsius = annealPoint.get().celsius();
      return Span.ofCelsius(celsius, celsius, celsius, Origin.own("annealing point of the maker"));
    }
    return switch (family) {
      case FLOAT ->
          Span.ofCelsius(
              516,
              548,
              555,
              Origin.read("a float-glass bulletin, 548 °C; other sources 516 to 555 °C"));
      case SOFT_ART ->
          Span.ofCelsius(
              482,
              500,
              515,
              Origin.read("a kiln-forming blog's labels of several glasses, 482 to 515 °C"));
      case UNKNOWN ->
          Span.ofCelsius(
              477,
              515,
              555,
              Origin.read("the annealing points found for all sorts, 477 to 555 °C"));
    };
  }

  /** The lowest and the likely strain point. */
  public Span strain() {
    if (strainPoint.isPresent()) {
      double celsius = strainPoint.get().celsius();
      return Span.ofCelsius(celsius, celsius, celsius, Origin.own("strain point of the maker"));
    }
    Span anneal = anneal();
    return Span.ofCelsius(
        anneal.low().celsius() - STRAIN_BELOW_ANNEAL_KELVINS,
        anneal.usual().celsius() - STRAIN_BELOW_ANNEAL_KELVINS,
        anneal.high().celsius() - STRAIN_BELOW_ANNEAL_KELVINS,
        Origin.derived(
            "37 K under the annealing point, as a published float glass (548 and 511 °C)"));
  }

  /**
   * Its viscosity: through the maker's three points where they make a sensible curve (rounded
   * strain points often do not), else the standard float's curve moved along the temperature to the
   * annealing point and, where a softening point is known, stretched to it (our estimate for art
   * glass); with what it may be off by.
   */
  public Viscosities viscosities() {
    if (annealPoint.isPresent()) {
      Viscosity own = fitted().orElseGet(this::stretchedFloat);
      return new Viscosities(moved(own, -OWN_SPREAD_KELVINS), own, moved(own, OWN_SPREAD_KELVINS));
    }
    Viscosity standard = Viscosity.standardFloatGlass();
    if (family == Family.FLOAT) {
      return new Viscosities(
          moved(standard, -FLOAT_SPREAD_KELVINS), standard, moved(standard, FLOAT_SPREAD_KELVINS));
    }
    Span anneal = anneal();
    return new Viscosities(
        moved(standard, shift(standard, anneal.low().celsius())),
        moved(standard, shift(standard, anneal.usual().celsius())),
        moved(standard, shift(standard, anneal.high().celsius())));
  }

  /** Through three points, if the curve turns rigid somewhere that makes sense. */
  private Optional<Viscosity> fitted() {
    if (annealPoint.isEmpty() || strainPoint.isEmpty() || softeningPoint.isEmpty()) {
      return Optional.empty();
    }
    try {
      Viscosity fit =
          Viscosity.through(
              strainPoint.get(),
              Viscosity.STRAIN_LOG_POISE,
              annealPoint.get(),
              Viscosity.ANNEALING_LOG_POISE,
              softeningPoint.get(),
              Viscosity.SOFTENING_LOG_POISE,
              Origin.own("three points of the maker"));
      double rigid = fit.t0().celsius();
      boolean sensible = rigid >= 0 && rigid <= strainPoint.get().celsius() - 80;
      return sensible ? Optional.of(fit) : Optional.empty();
    } catch (IllegalArgumentException e) {
      return Optional.empty(); // a straight line or bent the wrong way
    }
  }

  /** The standard float's curve with the temperatures moved and stretched to the own points. */
  private Viscosity stretchedFloat() {
    Viscosity standard = Viscosity.standardFloatGlass();
    double from = standard.temperatureAt(Viscosity.ANNEALING_LOG_POISE).celsius();
    double to = annealPoint.orElseThrow().celsius();
    double stretch =
        softeningPoint
            .map(
                soft ->
                    (soft.celsius() - to)
                        / (standard.temperatureAt(Viscosity.SOFTENING_LOG_POISE).celsius() - from))
            .orElse(1.0);
    return Viscosity.of(
        standard.a(),
        standard.b() * stretch,
        Temperature.ofCelsius(to + stretch * (standard.t0().celsius() - from)),
        Origin.estimate("the standard float's curve moved to this glass's own points"));
  }

  private static double shift(Viscosity standard, double annealCelsius) {
    return annealCelsius - standard.temperatureAt(Viscosity.ANNEALING_LOG_POISE).celsius();
  }

  private static Viscosity moved(Viscosity curve, double kelvins) {
    return Viscosity.of(
        curve.a(),
        curve.b(),
        Temperature.ofCelsius(curve.t0().celsius() + kelvins),
        Origin.estimate("a known curve moved to this glass's annealing point"));
  }

  /** What carries its stress. */
  public Elastic elastic() {
    Elastic family =
        switch (this.family) {
          case FLOAT -> Elastic.FLOAT;
          case SOFT_ART, UNKNOWN -> Elastic.ART;
        };
    return expansion.map(own -> family.withExpansion(own.perKelvin())).orElse(family);
  }

  /**
   * Elasticity, expansion and conduction of a glass below its annealing point.
   *
   * @param youngPascals Young's modulus, Pa
   * @param poissonRatio Poisson's ratio, 0 to under 0.5
   * @param expansionPerKelvin linear expansion, 1/K
   * @param diffusivitySquareMetresPerSecond thermal diffusivity, m²/s
   * @param origin where they come from
   */
  public record Elastic(
      double youngPascals,
      double poissonRatio,
      double expansionPerKelvin,
      double diffusivitySquareMetresPerSecond,
      Origin origin) {

    /** Soft art glass; also what the table of cooling rates is told for. */
    public static final Elastic ART =
        new Elastic(70e9, 0.22, 9e-6, 4.2e-7, Origin.estimate("soda-lime glass, round numbers"));

    /** Float glass, by a maker's technical bulletin: k 0.937 W/(m K), c 880, 2500 kg/m³. */
    public static final Elastic FLOAT =
        new Elastic(
            72e9,
            0.23,
            8.3e-6,
            0.937 / (880 * 2500),
            Origin.read("a float-glass technical bulletin"));

    public Elastic {
      Objects.requireNonNull(origin, "origin");
      if (!(youngPascals > 0)
          || !(poissonRatio >= 0 && poissonRatio < 0.5)
          || !(expansionPerKelvin > 0)
          || !(diffusivitySquareMetresPerSecond > 0)) {
        throw new IllegalArgumentException(
            "The glass's modulus (%s Pa), Poisson's ratio (%s), expansion (%s 1/K) and diffusivity (%s m²/s) must make sense."
                .formatted(
                    youngPascals,
                    poissonRatio,
                    expansionPerKelvin,
                    diffusivitySquareMetresPerSecond));
      }
    }

    Elastic withExpansion(double perKelvin) {
      return new Elastic(
          youngPascals, poissonRatio, perKelvin, diffusivitySquareMetresPerSecond, origin);
    }

    /** {@code E alpha/(1 - nu)}: stress of a plate for each kelvin that is kept from shrinking. */
    public double pascalsPerKelvin() {
      return youngPascals * expansionPerKelvin / (1 - poissonRatio);
    }

    /** Shear modulus, Pa. */
    public double shearPascals() {
      return youngPascals / (2 * (1 + poissonRatio));
    }
  }
}
