package org.heatwright.app.files;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.heatwright.kiln.KilnBeliefs;
import org.heatwright.kiln.KilnQuantity;
import org.heatwright.kiln.Learned;

/**
 * The {@code learned} part of a kiln file: what {@code learn} wrote. Medians are in each quantity's
 * own unit; the covariance is that of the scores (see {@link KilnQuantity}), a row a quantity, in
 * the order of the medians.
 */
final class LearnedField {

  private static final List<KilnQuantity> QUANTITIES =
      Arrays.stream(KilnQuantity.values()).filter(KilnQuantity::learnable).toList();

  private LearnedField() {}

  /** Whether this version of the kiln model wrote it; another's is kept as it is and not used. */
  static boolean isOurs(YamlValue value) {
    YamlMap map = value.map();
    return map.optional("engine")
        .filter(YamlValue::isText)
        .map(engine -> engine.text().equals(Learned.ENGINE))
        .orElse(false);
  }

  static Learned read(YamlValue value) {
    YamlMap map = value.map("engine", "date", "firings", "medians", "covariance");
    YamlMap medians =
        map.required("medians")
            .map(QUANTITIES.stream().map(KilnQuantity::fileName).toArray(String[]::new));
    int all = KilnQuantity.values().length;
    double[] mean = new double[all];
    for (KilnQuantity quantity : QUANTITIES) {
      mean[quantity.ordinal()] = quantity.score(medians.required(quantity.fileName()).above0(""));
    }
    double[][] covariance = new double[all][all];
    for (int i = 0; i < all; i++) {
      covariance[i][i] = 1;
    }
    YamlValue rows = map.required("covariance");
    List<List<Double>> matrix = rows.listOf(row -> row.listOf(YamlValue::number));
    if (matrix.size() != QUANTITIES.size()
        || matrix.stream().anyMatch(row -> row.size() != QUANTITIES.size())) {
      throw rows.wrong("%d rows of %d numbers".formatted(QUANTITIES.size(), QUANTITIES.size()));
    }
    for (int i = 0; i < QUANTITIES.size(); i++) {
      for (int j = 0; j < QUANTITIES.size(); j++) {
        covariance[QUANTITIES.get(i).ordinal()][QUANTITIES.get(j).ordinal()] = matrix.get(i).get(j);
      }
    }
    return value.build(
        () ->
            new Learned(
                map.required("date").date(),
                map.required("firings").whole(1, 100_000),
                Learned.ENGINE,
                KilnBeliefs.of(mean, covariance)));
  }

  static String write(Learned learned) {
    KilnBeliefs beliefs = learned.beliefs();
    List<String> medians = new ArrayList<>();
    List<String> rows = new ArrayList<>();
    for (KilnQuantity quantity : QUANTITIES) {
      medians.add(quantity.fileName() + ": " + number(beliefs.median(quantity)));
      rows.add(
          QUANTITIES.stream()
              .map(other -> number(beliefs.covarianceFactor(quantity, other)))
              .collect(Collectors.joining(", ", "[", "]")));
    }
    return "\n  engine: %s\n  date: %s\n  firings: %d\n  medians: {%s}\n  covariance:\n    - %s"
        .formatted(
            learned.engine(),
            learned.date(),
            learned.firings(),
            String.join(", ", medians),
            String.join("\n    - ", rows));
  }

  /** Nine digits: more than any log can teach, and the covariance stays one. */
  private static String number(double value) {
    return YamlText.number(new java.math.BigDecimal(value).round(DIGITS).doubleValue());
  }

  private static final java.math.MathContext DIGITS = new java.math.MathContext(9);
}
