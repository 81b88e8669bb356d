package org.heatwright.app.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.files.BodyFile;
import org.heatwright.mould.BodyHistory;
import org.heatwright.mould.BodyProbe;

/**
 * What {@code body --json} prints. {@code seconds} and each probe's {@code celsius} go together,
 * one a report; heat is what the body took up through its faces.
 */
public record BodyJson(
    String material,
    String source,
    double endSeconds,
    double surroundingsAtEndCelsius,
    double heatTakenJoules,
    double hottestCelsius,
    List<Double> seconds,
    List<Probe> probes,
    Optional<String> trace) {

  /** One probe's readings. */
  public record Probe(
      String probe,
      double atStartCelsius,
      double atEndCelsius,
      double highestCelsius,
      List<Double> celsius) {}

  public static BodyJson of(
      BodyFile.Content content, BodyHistory history, double endSeconds, Optional<String> trace) {
    List<Probe> probes = new ArrayList<>();
    for (BodyProbe probe : history.probes()) {
      double[] celsius = history.celsius(probe);
      List<Double> list = new ArrayList<>();
      double highest = celsius[0];
      for (double value : celsius) {
        list.add(Math.rint(value * 1e4) / 1e4);
        highest = Math.max(highest, value);
      }
      probes.add(new Probe(probe.name(), celsius[0], celsius[celsius.length - 1], highest, list));
    }
    List<Double> seconds = new ArrayList<>();
    for (double s : history.seconds()) {
      seconds.add(s);
    }
    return new BodyJson(
        content.body().material().name(),
        content.body().material().origin().words(),
        endSeconds,
        content.surroundings().at(endSeconds),
        history.heatTakenJoules(),
        history.hottestCelsius(),
        seconds,
        probes,
        trace);
  }
}
