package org.heatwright.work.heattreat;

/** What a piece goes into the kiln for. */
public enum Treatment {
  /** Softening. */
  ANNEAL("annealing", false),
  /** Copper or its like into solution, water, then ageing: two firings. */
  SOLUTION_AND_AGE("solution and age hardening", false),
  /** Age hardening alone, as cast or as treated before. */
  AGE("age hardening", false),
  /** Taking stresses out without softening. */
  STRESS_RELIEF("stress relief", false),
  /** Warming before a torch or another step. */
  PREHEAT("preheating", true),
  /** Drying. */
  DRY("drying", true),
  /** Gold foil bonded to silver by burnishing hot. */
  KEUM_BOO("keum-boo", true),
  /** Warming granules and ground before the torch fuses them. */
  GRANULATION_PREHEAT("granulation preheat", true),
  /** Baking a patina, a wax or a lacquer. */
  PATINA_BAKE("patina bake", true);

  private final String words;
  private final boolean lowHeat;

  Treatment(String words, boolean lowHeat) {
    this.words = words;
    this.lowHeat = lowHeat;
  }

  public String words() {
    return words;
  }

  /** Whether it is a window of temperature to stay in rather than a change of the metal. */
  public boolean isLowHeat() {
    return lowHeat;
  }
}
