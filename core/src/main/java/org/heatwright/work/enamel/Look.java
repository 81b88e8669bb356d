package org.heatwright.work.enamel;

/** The stages that a coat goes through as it flows. */
public enum Look {
  SUGARY("sugary", Double.NEGATIVE_INFINITY),
  ORANGE_PEEL("orange peel", -1.3),
  GLOSSY("glossy", 0),
  OVER_FIRED("over-fired", 1.3);

  private final String words;
  private final double fromDecades;

  Look(String words, double fromDecades) {
    this.words = words;
    this.fromDecades = fromDecades;
  }

  public String words() {
    return words;
  }

  /**
   * log10 of the flow at which the stage begins over the flow at which gloss begins. Orange peel:
   * the grains have run together, some r/γ with r 75 µm, γ 0.3 N/m (memory: Frenkel 1945, viscous
   * sintering). Over-fired at twenty times the flow of gloss: estimate.
   */
  public double fromDecades() {
    return fromDecades;
  }

  double toDecades() {
    return this == OVER_FIRED ? Double.POSITIVE_INFINITY : values()[ordinal() + 1].fromDecades;
  }

  /** The stage at a flow. */
  static Look at(double decadesFromGloss) {
    Look found = SUGARY;
    for (Look look : values()) {
      if (decadesFromGloss >= look.fromDecades) {
        found = look;
      }
    }
    return found;
  }
}
