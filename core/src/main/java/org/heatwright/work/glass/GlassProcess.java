package org.heatwright.work.glass;

import org.heatwright.material.Origin;
import org.heatwright.units.Temperature;
import org.heatwright.work.glass.Glass.Span;

/**
 * What is to become of the glass. The temperatures are practice's for soft art glass; a stiffer
 * glass needs as much more as its annealing point lies above theirs.
 */
public enum GlassProcess {
  /** Bend into or over a form. */
  SLUMP("slump", 620, 650, 680, 0, 0),
  /** Just stuck together, edges still sharp. */
  SHARP_TACK("sharp tack fuse", 650, 690, 720, 0.008, 0.08),
  /** Stuck together, edges round. */
  TACK("tack fuse", 720, 740, 760, 0.08, 0.35),
  /** Softened into one body, the relief still to be felt. */
  CONTOUR("contour fuse", 760, 775, 788, 0.35, 1.1),
  /** One flat body. */
  FULL_FUSE("full fuse", 793, 800, 804, 1.1, 10),
  /** Only annealed, as it is. */
  ANNEAL("anneal", 0, 0, 0, 0, 0);

  /** Annealing points of the glasses that practice's temperatures are told for, °C. */
  private static final double ART_LOW_CELSIUS = 482;

  private static final double ART_HIGH_CELSIUS = 515;

  /** Practice's ranges are not told so exactly, K. */
  private static final double NO_MATTER_KELVINS = 5;

  private final String words;
  private final double lowCelsius;
  private final double usualCelsius;
  private final double highCelsius;
  private final double leastFlow;
  private final double mostFlow;

  GlassProcess(
      String words,
      double lowCelsius,
      double usualCelsius,
      double highCelsius,
      double leastFlow,
      double mostFlow) {
    this.words = words;
    this.lowCelsius = lowCelsius;
    this.usualCelsius = usualCelsius;
    this.highCelsius = highCelsius;
    this.leastFlow = leastFlow;
    this.mostFlow = mostFlow;
  }

  public String words() {
    return words;
  }

  /** Whether sheets are to grow together. */
  public boolean fuses() {
    return leastFlow > 0;
  }

  /** Whether the piece goes above its annealing range at all. */
  public boolean hasTop() {
    return this != ANNEAL;
  }

  /** Whether pieces stand on one another with steps between them when it is done. */
  public boolean leavesSteps() {
    return this == SHARP_TACK || this == TACK || this == CONTOUR;
  }

  /**
   * How far the glass has to flow, as {@code gamma/h ∫dt/eta}, from here on. Set so that practice's
   * temperatures for ten minutes on 3 mm sheet fall into their own process (our estimate).
   */
  public double leastFlow() {
    return leastFlow;
  }

  /** From there on it has gone further than this process. */
  public double mostFlow() {
    return mostFlow;
  }

  /** Practice's temperatures for a glass. Not for {@link #ANNEAL}. */
  public Span range(Glass glass) {
    if (!hasTop()) {
      throw new IllegalStateException("Annealing has no top temperature.");
    }
    double shift = shiftKelvins(glass);
    return Span.ofCelsius(
        lowCelsius + shift,
        usualCelsius + shift,
        highCelsius + shift,
        shift == 0
            ? Origin.read("kiln-forming pages on time and temperature, for soft art glass")
            : Origin.derived(
                "practice for soft art glass, moved by %.0f K as its annealing point lies %s"
                    .formatted(shift, shift > 0 ? "higher" : "lower")));
  }

  /** How much stiffer than the art glasses of practice it is, K. */
  public static double shiftKelvins(Glass glass) {
    if (glass.annealPoint().isEmpty() && glass.family() != Glass.Family.FLOAT) {
      return 0;
    }
    Temperature anneal = glass.anneal().usual();
    double celsius = anneal.celsius();
    double off = celsius - Math.max(ART_LOW_CELSIUS, Math.min(ART_HIGH_CELSIUS, celsius));
    return Math.abs(off) < NO_MATTER_KELVINS ? 0 : off;
  }
}
