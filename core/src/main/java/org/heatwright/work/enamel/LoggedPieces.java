package org.heatwright.work.enamel;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.heatwright.material.Viscosity;
import org.heatwright.mould.Surroundings;

/**
 * A log with door dips, split into the firings of its pieces.
 *
 * @param firings in order
 * @param fallKelvins by how much the display falls at an opening; without a spread where there was
 *     one only
 * @param backSeconds how long it needs from the shutting, over the openings it came back from;
 *     empty if it never did
 */
public record LoggedPieces(
    List<Firing> firings, Range fallKelvins, java.util.Optional<Range> backSeconds) {

  /** What the log says of an opening at which nothing goes in. */
  public static final String NOTHING_GOES_IN = "empty";

  /** How a door is used. */
  public enum Openings {
    /** At one opening the last piece comes out and the next goes in. */
    ONE_A_PIECE,
    /** One opening puts a piece in, the next takes it out. */
    TWO_A_PIECE
  }

  /**
   * One piece's stay in the kiln.
   *
   * @param number 1-based
   * @param name what the log calls it, or empty
   * @param inSeconds when the door was shut behind it, s in the log
   * @param outSeconds when the door opened for it, s
   * @param openSeconds how long the door stood open before it, s
   * @param fallKelvins how far the display fell
   * @param backSeconds from the shutting until the display was back, s; empty if it was not before
   *     it came out
   * @param beforeRecovery whether it came out before the display was back
   * @param hottestCelsius the piece, by its thin-plate curve
   * @param heatSeconds seconds at the working temperature that flow as much: its heat-work
   * @param fromGlossDecades log10 of its flow over what gloss usually needs
   * @param look the stage that this makes likely
   * @param curve the piece
   */
  public record Firing(
      int number,
      String name,
      double inSeconds,
      double outSeconds,
      double openSeconds,
      double fallKelvins,
      OptionalDouble backSeconds,
      boolean beforeRecovery,
      double hottestCelsius,
      double heatSeconds,
      double fromGlossDecades,
      Look look,
      PieceCurve curve) {

    /** From the door's shutting to its opening. */
    public double staySeconds() {
      return outSeconds - inSeconds;
    }
  }

  public LoggedPieces {
    firings = List.copyOf(firings);
  }

  /**
   * Splits a log.
   *
   * @param seconds rising, s
   * @param celsius the reading, °C
   * @param found the openings
   * @param openings how the door is used
   * @param body the piece
   * @param viscosity the enamel's
   * @param decades how much more than usual the enamel needs, by its tiles
   * @param workingCelsius where heat-work is counted
   */
  public static LoggedPieces of(
      double[] seconds,
      double[] celsius,
      DoorDips found,
      Openings openings,
      PieceBody body,
      Viscosity viscosity,
      double decades,
      double workingCelsius) {
    List<DoorDips.Dip> dips = found.dips();
    List<Firing> firings = new ArrayList<>();
    int step = openings == Openings.ONE_A_PIECE ? 1 : 2;
    for (int d = 0; d < dips.size(); d += step) {
      DoorDips.Dip in = dips.get(d);
      double out = d + 1 < dips.size() ? dips.get(d + 1).openSeconds() : found.endSeconds();
      if (!(out > in.shutSeconds()) || NOTHING_GOES_IN.equalsIgnoreCase(in.what())) {
        continue;
      }
      PieceCurve curve =
          body.follow(chamber(seconds, celsius, in.shutSeconds(), out), 20, stay(in, out), 0);
      double flow = curve.logFlowAt(viscosity, stay(in, out)) - Fusing.GLOSS_LOG_FLOW - decades;
      boolean early = in.backSeconds().isEmpty();
      firings.add(
          new Firing(
              firings.size() + 1,
              in.what(),
              in.shutSeconds(),
              out,
              in.shutSeconds() - in.openSeconds(),
              in.fallKelvins(),
              in.backSeconds(),
              early,
              curve.hottestCelsius(stay(in, out)),
              curve.equivalentSeconds(viscosity, workingCelsius, stay(in, out)),
              flow,
              Look.at(flow),
              curve));
    }
    double[] falls = dips.stream().mapToDouble(DoorDips.Dip::fallKelvins).toArray();
    double[] backs =
        dips.stream()
            .filter(dip -> dip.backSeconds().isPresent())
            .mapToDouble(dip -> dip.backSeconds().getAsDouble())
            .toArray();
    return new LoggedPieces(
        firings,
        falls.length == 0 ? Range.exactly(0) : Range.ofSample(falls),
        backs.length == 0
            ? java.util.Optional.empty()
            : java.util.Optional.of(Range.ofSample(backs)));
  }

  private static double stay(DoorDips.Dip in, double out) {
    return out - in.shutSeconds();
  }

  /** The reading as surroundings, from a piece's shutting on. */
  private static Surroundings chamber(double[] seconds, double[] celsius, double from, double to) {
    double[] rows =
        IntStream.range(0, seconds.length)
            .filter(i -> seconds[i] > from && seconds[i] < to)
            .mapToDouble(i -> seconds[i])
            .toArray();
    double[] times = new double[rows.length + 2];
    double[] readings = new double[times.length];
    System.arraycopy(rows, 0, times, 1, rows.length);
    times[0] = from;
    times[times.length - 1] = to;
    for (int i = 0; i < times.length; i++) {
      readings[i] = org.heatwright.numerics.Samples.linear(seconds, celsius, times[i]);
      times[i] -= from;
    }
    return Surroundings.of(times, readings, readings);
  }
}
