package org.heatwright.app.files;

import java.util.List;

/**
 * What a person's own values can be of. The keys are those of the work that takes them, so that a
 * value means the same in both.
 */
public enum ValuesOf {
  ENAMEL(
      "enamel",
      List.of(),
      "enamel",
      "softening-celsius",
      "expansion-ppm-k",
      "oxides-mol-percent",
      "oxides-mass-percent",
      "coat-mm",
      "working-celsius"),
  GLASS(
      "glass",
      List.of(),
      "glass",
      "anneal-celsius",
      "strain-celsius",
      "softening-celsius",
      "expansion",
      "anneal-soak"),
  INVESTMENT("burnout", List.of("investment"), "binder", "water-powder"),
  ALLOY(
      "burnout",
      List.of("metal"),
      "alloy",
      "pour-mould-celsius",
      "pour-metal-celsius",
      "least-mould-celsius"),
  CLAY("sinter", List.of(), "clay"),
  METAL(
      "heat-treat",
      List.of(),
      "metal",
      "solidus-celsius",
      "solution-celsius",
      "target-celsius",
      "soak");

  private final String work;
  private final List<String> place;
  private final List<String> keys;

  ValuesOf(String work, List<String> place, String... keys) {
    this.work = work;
    this.place = place;
    this.keys = List.of(keys);
  }

  /** The {@code kind} of the works that take them. */
  public String work() {
    return work;
  }

  /** Keys under which they stand there; none: at the top. */
  List<String> place() {
    return place;
  }

  /** What may be told of them, besides a data sheet. */
  public List<String> keys() {
    return keys;
  }

  /** Whether a data sheet may be told: everything but an alloy has one of a firing. */
  public boolean hasDataSheet() {
    return this != ALLOY;
  }

  /** As files write it. */
  public String word() {
    return YamlValue.word(this);
  }
}
