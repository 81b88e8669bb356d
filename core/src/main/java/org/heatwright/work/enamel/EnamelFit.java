package org.heatwright.work.enamel;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * Whether an enamel sits well on its metal: stresses and bow of the cooled piece over what is not
 * known of it, and what they make likely.
 *
 * <p>Cracks: the enamel, or the counter-enamel, is pulled at a face by more than its strength.
 * Chips: it is pushed so much that the energy it holds can drive it off. What that takes is not
 * known well: {@link #CHIP_JOULES} is set so that enamels which are sold for copper, silver and
 * gold hold at usual thickness, and the answer "not sure" is a right one.
 *
 * @param verdict what is likely
 * @param crackShare share of the draws in which it cracks
 * @param chipShare share of the draws in which it chips
 * @param crackMarginPascals how much more pull the glass would stand at its most pulled face, Pa;
 *     below zero it cracks
 * @param chipMarginFactor how many times the energy that the coat holds would drive it off; below
 *     one it does
 * @param facePascals the most pulled face of the glass, tension positive, Pa
 * @param outerPascals the enamel's free face
 * @param meanPascals the enamel, mean over its thickness
 * @param metalPascals the metal's greatest pull
 * @param bowMetres how far the middle stands off the edge; positive: hollow on the enamelled side
 * @param balancingMetres counter-enamel that leaves it flat, where some thickness does
 * @param metalYields whether the metal would yield, so that the true stresses are lower
 */
public record EnamelFit(
    Verdict verdict,
    double crackShare,
    double chipShare,
    Range crackMarginPascals,
    Range chipMarginFactor,
    Range facePascals,
    Range outerPascals,
    Range meanPascals,
    Range metalPascals,
    Range bowMetres,
    Optional<Range> balancingMetres,
    boolean metalYields) {

  /** Where a pull on a fired coat begins to crack it, Pa: estimate between the next two. */
  // Read, a float glass maker's bulletin: design stress 19 MPa, mean strength 41 MPa.
  static final Range STRENGTH_PASCALS = Range.of(19e6, 35e6, 60e6);

  /** Elastic energy of a coat that drives it off, J/m². Estimate, see above. */
  static final Range CHIP_JOULES = Range.of(280, 550, 1000);

  /** Read from a thickness that is only meant: a coat is so even. Estimate. */
  private static final double THICKNESS_SHARE = 0.15;

  private static final double ROOM_CELSIUS = 20;
  private static final int DRAWS = 240;
  private static final double LIKELY_SHARE = 0.5;
  private static final double SOUND_SHARE = 0.1;

  /** What is likely. */
  public enum Verdict {
    HAIRLINE_CRACKS_LIKELY("hairline cracks likely"),
    CHIPS_LIKELY("chips likely"),
    NOT_SURE("not sure"),
    SOUND("sound");

    private final String words;

    Verdict(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * The piece.
   *
   * @param metal what carries it
   * @param sheetMetres thickness of the metal, m
   * @param enamel on top
   * @param enamelMetres how thick when fired, m
   * @param counter the enamel below, if any
   * @param counterMetres how thick, m; with no counter-enamel it does not matter
   * @param acrossMetres size of the piece for its bow, m
   */
  public record Piece(
      EnamelMetal metal,
      double sheetMetres,
      EnamelGlass enamel,
      double enamelMetres,
      Optional<EnamelGlass> counter,
      double counterMetres,
      double acrossMetres) {

    public Piece {
      Objects.requireNonNull(metal, "metal");
      Objects.requireNonNull(enamel, "enamel");
      Objects.requireNonNull(counter, "counter");
      if (!(sheetMetres > 0 && enamelMetres > 0 && counterMetres >= 0 && acrossMetres > 0)) {
        throw new IllegalArgumentException(
            "Sheet (%s m), enamel (%s m) and size (%s m) must be above zero."
                .formatted(sheetMetres, enamelMetres, acrossMetres));
      }
    }
  }

  /** Judges a piece; the same piece gives the same answer. */
  public static EnamelFit of(Piece piece) {
    return of(piece, DRAWS, 20261126);
  }

  static EnamelFit of(Piece piece, int draws, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[] crack = new double[draws];
    double[] chip = new double[draws];
    double[] face = new double[draws];
    double[] outer = new double[draws];
    double[] mean = new double[draws];
    double[] metal = new double[draws];
    double[] bow = new double[draws];
    double[] balance = new double[draws];
    int cracks = 0;
    int chips = 0;
    int yields = 0;
    for (int d = 0; d < draws; d++) {
      Draw draw = Draw.of(piece, random);
      crack[d] = draw.strengthPascals() - draw.facePascals();
      chip[d] = draw.chipFactor();
      cracks += crack[d] < 0 ? 1 : 0;
      chips += crack[d] >= 0 && chip[d] < 1 ? 1 : 0;
      yields += draw.yields() ? 1 : 0;
      face[d] = draw.facePascals();
      outer[d] = draw.laminate().upperPascals(0);
      mean[d] = draw.laminate().meanPascals(0);
      metal[d] = draw.metalPascals();
      bow[d] = draw.laminate().bowMetres(piece.acrossMetres());
      balance[d] = draw.balancing().orElse(Double.POSITIVE_INFINITY);
    }
    double crackShare = (double) cracks / draws;
    double chipShare = (double) chips / draws;
    Range balancing = Range.ofSample(balance);
    return new EnamelFit(
        verdict(crackShare, chipShare),
        crackShare,
        chipShare,
        Range.ofSample(crack),
        Range.ofSample(chip),
        Range.ofSample(face),
        Range.ofSample(outer),
        Range.ofSample(mean),
        Range.ofSample(metal),
        Range.ofSample(bow),
        Double.isFinite(balancing.high()) ? Optional.of(balancing) : Optional.empty(),
        2 * yields > draws);
  }

  private static Verdict verdict(double cracks, double chips) {
    if (cracks >= LIKELY_SHARE) {
      return Verdict.HAIRLINE_CRACKS_LIKELY;
    }
    if (chips >= LIKELY_SHARE) {
      return Verdict.CHIPS_LIKELY;
    }
    return cracks + chips <= SOUND_SHARE ? Verdict.SOUND : Verdict.NOT_SURE;
  }

  /** One piece that it may be. */
  private record Draw(
      Laminate laminate,
      double facePascals,
      double metalPascals,
      double strengthPascals,
      double chipFactor,
      boolean yields,
      OptionalDouble balancing) {

    static Draw of(Piece piece, SplittableRandom random) {
      double change = ROOM_CELSIUS - piece.enamel().setsCelsius().drawn(random);
      Layer metal =
          piece
              .metal()
              .layer(piece.sheetMetres())
              .withExpansion(piece.metal().perKelvin().drawn(random));
      double young = EnamelGlass.YOUNG_PASCALS.drawn(random);
      double expansionDeviations = random.nextGaussian();
      Layer enamel =
          new Layer(
              Range.about(piece.enamelMetres(), THICKNESS_SHARE).drawn(random),
              young,
              EnamelGlass.POISSON_RATIO,
              piece.enamel().perKelvin().at(expansionDeviations));
      double counterThickness = Range.about(piece.counterMetres(), THICKNESS_SHARE).drawn(random);
      // The same pot on both sides has one expansion, whatever it is.
      EnamelGlass below = piece.counter().orElse(piece.enamel());
      double counterDeviations =
          below.equals(piece.enamel()) ? expansionDeviations : random.nextGaussian();
      Layer counter =
          new Layer(
              Math.max(1e-6, counterThickness),
              young,
              EnamelGlass.POISSON_RATIO,
              below.perKelvin().at(counterDeviations));
      double strength = STRENGTH_PASCALS.drawn(random);
      double chip = CHIP_JOULES.drawn(random);
      double yield = piece.metal().yieldPascals().drawn(random);
      List<Layer> layers = new ArrayList<>(List.of(enamel, metal));
      if (piece.counter().isPresent() && piece.counterMetres() > 0) {
        layers.add(counter);
      }
      Laminate laminate = Laminate.of(layers, change);
      double pull =
          Math.max(Math.abs(laminate.upperPascals(1)), Math.abs(laminate.lowerPascals(1)));
      return new Draw(
          laminate,
          face(laminate, layers.size()),
          pull,
          strength,
          chip / energy(laminate, layers.size()),
          pull > yield,
          Laminate.balancingMetres(enamel, metal, counter, change, 0.003));
    }

    /** The most pulled face of the glass. */
    private static double face(Laminate laminate, int layers) {
      double most = Math.max(laminate.upperPascals(0), laminate.lowerPascals(0));
      return layers == 2
          ? most
          : Math.max(most, Math.max(laminate.upperPascals(2), laminate.lowerPascals(2)));
    }

    /** The most energy that a coat in compression holds, J/m²; a little where none does. */
    private static double energy(Laminate laminate, int layers) {
      double most = 1;
      for (int i = 0; i < layers; i += 2) {
        if (laminate.meanPascals(i) < 0) {
          most = Math.max(most, laminate.joulesPerSquareMetre(i));
        }
      }
      return most;
    }
  }
}
