package org.heatwright.work;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.units.Temperature;
import org.heatwright.work.enamel.EnamelGlass;
import org.heatwright.work.enamel.FusingClass;
import org.heatwright.work.enamel.Oxide;
import org.heatwright.work.enamel.OxideGlass;
import org.heatwright.work.enamel.TestTile;

/**
 * What is known of an enamelled piece beyond its metal and the hardness of its enamel. All of it
 * may be left out.
 *
 * @param coatMetres all enamel on the front when fired, m, 0.02 to 5 mm; empty: {@link
 *     #USUAL_COAT_METRES}
 * @param counter the counter-enamel, if there is one
 * @param expansion of the enamel on the front
 * @param softening where the maker says the enamel softens (log 7.6 poise)
 * @param solidus where the supplier says the metal begins to melt
 * @param trivetKilograms trivet and mesh that go in and out with a piece, kg, 0 to 5; empty: by the
 *     piece's size
 * @param coats in the order of firing; empty: one firing
 * @param tiles what a person saw of test tiles of this enamel
 */
public record EnamelBuild(
    OptionalDouble coatMetres,
    Optional<Counter> counter,
    Optional<Expansion> expansion,
    Optional<Temperature> softening,
    Optional<Temperature> solidus,
    OptionalDouble trivetKilograms,
    List<EnamelCoat> coats,
    List<TestTile> tiles) {

  /** Two or three thin coats of jewellery. Estimate. */
  public static final double USUAL_COAT_METRES = 0.0003;

  /**
   * Enamel on the back.
   *
   * @param coatMetres when fired, m; empty: as thick as the front
   * @param expansion of it; empty: the front's
   */
  public record Counter(OptionalDouble coatMetres, Optional<Expansion> expansion) {
    public Counter {
      requireCoat(coatMetres);
      Objects.requireNonNull(expansion, "expansion");
    }
  }

  /** How much an enamel expands: by its maker or by its oxides. */
  public sealed interface Expansion {

    EnamelGlass glass(FusingClass fusing);

    /**
     * By the maker's data sheet.
     *
     * @param perKelvin mean linear expansion, 1/K, 3e-6 to 25e-6
     */
    record OfSheet(double perKelvin) implements Expansion {
      public OfSheet {
        if (!(perKelvin >= 3e-6 && perKelvin <= 25e-6)) {
          throw new IllegalArgumentException(
              "The expansion of the enamel (%s 1/K) must be 3e-6 to 25e-6.".formatted(perKelvin));
        }
      }

      @Override
      public EnamelGlass glass(FusingClass fusing) {
        return EnamelGlass.ofSheet(perKelvin, fusing);
      }
    }

    /**
     * By its oxides; refused where the additive model does not hold.
     *
     * @param percent share of each, in % of mass or of moles
     * @param byMass whether of mass
     */
    record OfOxides(Map<Oxide, Double> percent, boolean byMass) implements Expansion {
      public OfOxides {
        percent = Map.copyOf(percent);
        of(percent, byMass);
      }

      private static OxideGlass of(Map<Oxide, Double> percent, boolean byMass) {
        Map<Oxide, Double> ordered = new EnumMap<>(Oxide.class);
        ordered.putAll(percent);
        return byMass ? OxideGlass.ofMassPercent(ordered) : OxideGlass.ofMolPercent(ordered);
      }

      public OxideGlass oxides() {
        return of(percent, byMass);
      }

      @Override
      public EnamelGlass glass(FusingClass fusing) {
        return EnamelGlass.of(oxides(), fusing);
      }
    }
  }

  public EnamelBuild {
    requireCoat(coatMetres);
    Objects.requireNonNull(counter, "counter");
    Objects.requireNonNull(expansion, "expansion");
    Objects.requireNonNull(softening, "softening");
    Objects.requireNonNull(solidus, "solidus");
    coats = List.copyOf(coats);
    tiles = List.copyOf(tiles);
    trivetKilograms.ifPresent(
        kilograms -> {
          if (!(kilograms >= 0 && kilograms <= 5)) {
            throw new IllegalArgumentException(
                "Trivet and mesh (%s g) must be 0 to 5000 g.".formatted(kilograms * 1000));
          }
        });
    softening.ifPresent(
        t -> {
          if (!(t.celsius() >= 450 && t.celsius() <= 800)) {
            throw new IllegalArgumentException(
                "The softening point of the enamel (%s °C) must be 450 to 800 °C."
                    .formatted(t.celsius()));
          }
        });
    solidus.ifPresent(
        t -> {
          if (!(t.celsius() >= 600 && t.celsius() <= 1600)) {
            throw new IllegalArgumentException(
                "The solidus of the metal (%s °C) must be 600 to 1600 °C.".formatted(t.celsius()));
          }
        });
  }

  private static void requireCoat(OptionalDouble metres) {
    metres.ifPresent(
        m -> {
          if (!(m >= 2e-5 && m <= 0.005)) {
            throw new IllegalArgumentException(
                "The coat of enamel (%s mm) must be 0.02 to 5 mm.".formatted(m * 1000));
          }
        });
  }

  /** Nothing known. */
  public static EnamelBuild unknown() {
    return new EnamelBuild(
        OptionalDouble.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        List.of(),
        List.of());
  }

  /** The same on a weighed trivet and mesh, kg. */
  public EnamelBuild withTrivet(double kilograms) {
    return new EnamelBuild(
        coatMetres,
        counter,
        expansion,
        softening,
        solidus,
        OptionalDouble.of(kilograms),
        coats,
        tiles);
  }

  public double frontMetres() {
    return coatMetres.orElse(USUAL_COAT_METRES);
  }

  /** Enamel on the back, m; 0 without. */
  public double backMetres() {
    return counter.map(c -> c.coatMetres().orElse(frontMetres())).orElse(0.0);
  }

  /** Firings of one piece. */
  public int firings() {
    return coats.isEmpty() ? 1 : coats.stream().mapToInt(EnamelCoat::times).sum();
  }
}
