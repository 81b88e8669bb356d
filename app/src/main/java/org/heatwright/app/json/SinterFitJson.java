package org.heatwright.app.json;

import java.util.List;

/**
 * What {@code sinter fit --json} prints.
 *
 * @param clay its word in files
 * @param strips how many were measured
 * @param firings how many clearly different firings they came from
 * @param tellsActivation whether they say how time trades for heat
 * @param strained whether some agree with no curve held likely
 * @param activationKilojoulesPerMole of the curves that are left
 * @param rows usual firings of the clay
 * @param said in a sentence
 */
public record SinterFitJson(
    String clay,
    int strips,
    int firings,
    boolean tellsActivation,
    boolean strained,
    LikelyJson activationKilojoulesPerMole,
    List<RowJson> rows,
    String said) {

  /** One usual firing. */
  public record RowJson(
      double celsius, long holdMinutes, LikelyJson shrinkagePercent, LikelyJson densityPercent) {}
}
