package org.heatwright.app.web;

import java.math.BigDecimal;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.units.TemperatureUnit;

/**
 * Curves over one time axis, whatever they are of: a plan, a log against its forecast, a running
 * firing with readings by hand, a piece on its own clock. Seconds count from where the axis begins.
 *
 * @param name what files taken from it are called, e.g. "Harbour burnout in Capstan"
 * @param unit in which it is shown first
 * @param start where second 0 lies by the clock, where that is known
 * @param brief true for a matter of minutes, told in seconds
 * @param lengthSeconds right end of the time axis
 * @param bottomCelsius lower end of the temperature axis
 * @param topCelsius upper end of it
 * @param band where a display or a piece is nine times in ten
 * @param lines what is drawn, the earlier ones below the later ones
 * @param stretches nights and windows along the time axis
 * @param limits never above
 * @param segments of the program
 * @param corners of the program that can be dragged; empty where nothing can be edited
 * @param nowSeconds the present, where the firing runs
 * @param sketch true if one draw stands behind it, so that there is no band
 */
record CurveData(
    String name,
    TemperatureUnit unit,
    Optional<ZonedDateTime> start,
    boolean brief,
    double lengthSeconds,
    double bottomCelsius,
    double topCelsius,
    Optional<Band> band,
    List<Line> lines,
    List<Stretch> stretches,
    List<Limit> limits,
    List<Part> segments,
    List<Corner> corners,
    Optional<Double> nowSeconds,
    boolean sketch) {

  CurveData {
    Objects.requireNonNull(name, "name");
    lines = List.copyOf(lines);
    stretches = List.copyOf(stretches);
    limits = List.copyOf(limits);
    segments = List.copyOf(segments);
    corners = List.copyOf(corners);
    if (!(lengthSeconds > 0) || !(topCelsius > bottomCelsius)) {
      throw new IllegalArgumentException(
          "The curves (%s s long, %s to %s °C) need a length and a height."
              .formatted(lengthSeconds, bottomCelsius, topCelsius));
    }
  }

  CurveData with(List<Line> otherLines) {
    return new CurveData(
        name,
        unit,
        start,
        brief,
        lengthSeconds,
        bottomCelsius,
        topCelsius,
        band,
        otherLines,
        stretches,
        limits,
        segments,
        corners,
        nowSeconds,
        sketch);
  }

  /** What a line tells; each is drawn in a way that differs without colour too. */
  enum Role {
    /** Where the display, or a piece, is predicted: a fine line. */
    DISPLAY,
    /** What the controller aims at: dashes. */
    SETPOINT,
    /** A place inside the work, predicted: dots. */
    INSIDE,
    /** What surrounds a piece, predicted: long dashes. */
    CHAMBER,
    /** What was measured: a firm line. */
    MEASURED,
    /** What a person read off the display: a dot each. */
    READINGS;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Places of a band on one grid.
   *
   * @param name for the legend
   */
  record Band(
      String name, List<Double> seconds, List<Double> lowCelsius, List<Double> highCelsius) {
    Band {
      seconds = List.copyOf(seconds);
      lowCelsius = List.copyOf(lowCelsius);
      highCelsius = List.copyOf(highCelsius);
    }
  }

  /**
   * One line. A log with gaps is several of one name.
   *
   * @param name for the legend
   * @param says how a sentence about it begins, e.g. "the display should say"
   * @param seconds rising
   */
  record Line(Role role, String name, String says, List<Double> seconds, List<Double> celsius) {
    Line {
      seconds = List.copyOf(seconds);
      celsius = List.copyOf(celsius);
      if (seconds.size() != celsius.size()) {
        throw new IllegalArgumentException(
            "The line “%s” has %d times and %d temperatures."
                .formatted(name, seconds.size(), celsius.size()));
      }
    }
  }

  /** What a stretch of time is. */
  enum During {
    NIGHT,
    READY,
    EVENT;

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * A stretch of time.
   *
   * @param label for the legend, and beside an event
   * @param toSeconds the same as {@code fromSeconds} for a moment
   */
  record Stretch(During during, String label, double fromSeconds, double toSeconds) {}

  /** A temperature that must not be exceeded, and whose limit it is, e.g. "the kiln". */
  record Limit(double celsius, String why) {}

  /** A segment of the program, 1-based, from its start to the end of its hold. */
  record Part(int number, double fromSeconds, double toSeconds) {}

  /**
   * One segment's corners: where its ramp ends, and where its hold ends. What is dragged goes into
   * the form fields {@code rate1}, {@code target1}, {@code hold1} and so on.
   *
   * @param segment 1-based
   * @param fromSeconds where its ramp begins
   * @param reachedSeconds where its ramp ends
   * @param endSeconds where its hold ends
   * @param fromCelsius where its ramp begins
   * @param targetCelsius where it ends
   * @param unit of the fields
   * @param targetStep what one step of the keypad changes, degrees of the unit
   * @param rateStep likewise, degrees of the unit an hour; empty where the keypad takes a time
   * @param rampStepMinutes likewise, where it takes the time to the target
   * @param holdStepMinutes likewise
   */
  record Corner(
      int segment,
      double fromSeconds,
      double reachedSeconds,
      double endSeconds,
      double fromCelsius,
      double targetCelsius,
      TemperatureUnit unit,
      BigDecimal targetStep,
      Optional<BigDecimal> rateStep,
      Optional<BigDecimal> rampStepMinutes,
      BigDecimal holdStepMinutes) {}
}
