package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.app.plot.CorePlot;
import org.heatwright.app.plot.Figure;
import org.heatwright.app.plot.SectionPlot;
import org.heatwright.app.plot.Svg;
import org.heatwright.app.report.InsideWords;
import org.heatwright.app.report.WhenWords;
import org.heatwright.forecast.ForecastTrace;
import org.heatwright.forecast.InsideForecast;
import org.heatwright.mould.Mould;
import org.heatwright.mould.MouldFiring;
import org.heatwright.mould.PourWindow;
import org.heatwright.units.TemperatureUnit;

/** Shows the inside of the moulds of a planned firing. */
final class InsideDesk {

  private static final double MINUTE_SECONDS = 60;

  private InsideDesk() {}

  /**
   * The page.
   *
   * @param mould 1-based, as typed; the first where it is none
   * @param minute as typed; the program's end where it is none
   */
  static InsidePage page(Firing firing, String clock, String mould, String minute) {
    List<InsideForecast> all = firing.forecast().inside();
    String plan = firing.choices().sealed();
    String back = "/plan?" + firing.choices().query();
    if (all.isEmpty()) {
      return new InsidePage(
          clock,
          back,
          plan,
          List.of(),
          Optional.of("There are no moulds in this firing."),
          Optional.empty());
    }
    InsideForecast chosen = chosen(all, mould);
    List<InsidePage.Kind> kinds = new ArrayList<>();
    for (InsideForecast one : all) {
      kinds.add(
          new InsidePage.Kind(
              one.mould(), words(firing, one).name(), one.mould() == chosen.mould()));
    }
    double[] grid = firing.forecast().trace().seconds();
    double last = grid[grid.length - 1];
    int at = minute(firing, minute);
    ForecastTrace trace = firing.forecast().trace();
    Figure curves =
        CorePlot.of(
            new CorePlot.Curves(
                words(firing, chosen).name(),
                chosen,
                last,
                second -> trace.displayCelsiusAt(second).median(),
                false,
                unit(firing),
                Optional.of(firing.start().start())));
    return new InsidePage(
        clock,
        back,
        plan,
        kinds,
        Optional.empty(),
        Optional.of(
            new InsidePage.Shown(
                words(firing, chosen).name(),
                sentences(firing, chosen, at * MINUTE_SECONDS),
                Svg.inPage(curves, "curves-wide", Figure.Size.WIDE),
                Svg.inPage(curves, "curves-narrow", Figure.Size.NARROW),
                section(firing, chosen, at),
                at,
                lastMinute(firing),
                when(firing).full(at * MINUTE_SECONDS))));
  }

  private static List<String> sentences(Firing firing, InsideForecast chosen, double second) {
    InsideWords words = words(firing, chosen);
    List<String> said = new ArrayList<>(words.sentences(second));
    double depth = PourWindow.usualDepthMetres(words.mould());
    firing
        .composition()
        .charge()
        .investment()
        .flatMap(mix -> words.pour(mix, firing.kiln().room(), second, depth))
        .map(words::words)
        .ifPresent(said::add);
    return said;
  }

  /** The cut mould alone, for the script; empty where there are no moulds. */
  static Optional<String> section(Firing firing, String mould, String minute) {
    List<InsideForecast> all = firing.forecast().inside();
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(section(firing, chosen(all, mould), minute(firing, minute)));
  }

  private static String section(Firing firing, InsideForecast inside, int minute) {
    double second = minute * MINUTE_SECONDS;
    MouldFiring middle = inside.middle(second);
    return Svg.inPage(
        SectionPlot.of(
            middle.sectionAt(second),
            middle.setting(),
            unit(firing),
            "Mould %d at %s".formatted(inside.mould(), when(firing).full(second))),
        "section-now",
        "cut");
  }

  private static InsideForecast chosen(List<InsideForecast> all, String mould) {
    return all.stream()
        .filter(one -> String.valueOf(one.mould()).equals(mould))
        .findFirst()
        .orElse(all.get(0));
  }

  private static int lastMinute(Firing firing) {
    double[] grid = firing.forecast().trace().seconds();
    return (int) Math.floor(grid[grid.length - 1] / MINUTE_SECONDS);
  }

  /** What was typed, or the program's likely end; never outside of the firing. */
  private static int minute(Firing firing, String typed) {
    int most = lastMinute(firing);
    int end = (int) Math.min(most, firing.forecast().endSeconds().median() / MINUTE_SECONDS);
    return typed.matches("\\d{1,6}") ? Math.min(most, Integer.parseInt(typed)) : end;
  }

  private static InsideWords words(Firing firing, InsideForecast inside) {
    Mould mould = firing.composition().charge().moulds().get(inside.mould() - 1);
    return new InsideWords(inside, mould, unit(firing), when(firing));
  }

  private static TemperatureUnit unit(Firing firing) {
    return firing.program().expressible().unit();
  }

  private static WhenWords when(Firing firing) {
    return new WhenWords(Optional.of(firing.start().start()));
  }
}
