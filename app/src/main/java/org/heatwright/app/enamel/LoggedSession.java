package org.heatwright.app.enamel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.app.files.LogFile;
import org.heatwright.inspect.Wording;
import org.heatwright.material.Viscosity;
import org.heatwright.units.TemperatureChange;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelOutlook;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.enamel.DoorDips;
import org.heatwright.work.enamel.LoggedPieces;
import org.heatwright.work.enamel.PieceBody;

/**
 * One session's log, split into its pieces.
 *
 * @param name the log's
 * @param pieces its firings
 * @param workingCelsius where heat-work is counted, °C
 */
public record LoggedSession(String name, LoggedPieces pieces, double workingCelsius) {

  /**
   * What the pieces of a work are judged by.
   *
   * @param body the piece
   * @param viscosity its enamel
   * @param decades how much more flow than usual it needs, by its tiles
   * @param workingCelsius the work's temperature, °C
   * @param tiles how many tiles that rests on
   */
  public record Judge(
      PieceBody body, Viscosity viscosity, double decades, double workingCelsius, int tiles) {

    /** How far to trust the looks. */
    public String caveat() {
      return tiles > 0
          ? "Looks are by %d test tile%s of this enamel; the reading stands for the chamber, so a thermocouple that lags makes them a little late."
              .formatted(tiles, tiles == 1 ? "" : "s")
          : "Looks are for any enamel of its class, to a factor of some five either way: compare pieces with each other, or give test tiles in the work file.";
    }
  }

  /** The judge of a work, by what is to be expected of it. */
  public static Judge judge(EnamelWork work, EnamelOutlook outlook) {
    return new Judge(
        EnamelOutlook.body(work),
        EnamelOutlook.viscosity(work),
        outlook.decades().median(),
        outlook.working().celsius(),
        work.build().tiles().size());
  }

  /** Splits a log. */
  public static LoggedSession of(
      String name, LogFile.Log log, Judge judge, LoggedPieces.Openings openings) {
    double[] seconds = log.rows().stream().mapToDouble(LogFile.Row::seconds).toArray();
    double[] celsius = log.rows().stream().mapToDouble(LogFile.Row::chamberCelsius).toArray();
    double[] setpoint =
        log.rows().stream().mapToDouble(r -> r.setpointCelsius().orElse(Double.NaN)).toArray();
    List<Optional<String>> events = log.rows().stream().map(LogFile.Row::event).toList();
    DoorDips dips = DoorDips.find(seconds, celsius, setpoint, events);
    return new LoggedSession(
        name,
        LoggedPieces.of(
            seconds,
            celsius,
            dips,
            openings,
            judge.body(),
            judge.viscosity(),
            judge.decades(),
            judge.workingCelsius()),
        judge.workingCelsius());
  }

  /** "14 pieces in friday.csv". */
  public String headline() {
    int count = pieces.firings().size();
    return "%d piece%s in %s".formatted(count, count == 1 ? "" : "s", name);
  }

  /** What the door costs in this log. */
  public String doorWords(TemperatureUnit unit) {
    String falls =
        "The display falls %.0f to %s at the door"
            .formatted(
                unit.value(TemperatureChange.ofKelvins(pieces.fallKelvins().low())),
                difference(pieces.fallKelvins().high(), unit));
    return pieces
        .backSeconds()
        .map(
            back ->
                "%s and is back after %s to %s."
                    .formatted(falls, minutes(back.low()), minutes(back.high())))
        .orElse(falls + " and never came back before the next opening.");
  }

  /** One line about a firing. */
  public String words(LoggedPieces.Firing firing, TemperatureUnit unit) {
    List<String> parts = new ArrayList<>();
    if (!firing.name().isEmpty()) {
      parts.add(firing.name());
    }
    parts.add(
        "in at %s for %s".formatted(clock(firing.inSeconds()), minutes(firing.staySeconds())));
    parts.add(
        "heat-work %s at %s"
            .formatted(minutes(firing.heatSeconds()), Wording.whole(workingCelsius, unit)));
    parts.add(firing.look().words());
    parts.add("hottest " + Wording.whole(firing.hottestCelsius(), unit));
    parts.add(
        "display fell %s, %s"
            .formatted(difference(firing.fallKelvins(), unit), backWords(firing.backSeconds())));
    return String.join("; ", parts)
        + (firing.beforeRecovery() ? ". Pulled before the display was back." : ".");
  }

  private static String difference(double kelvins, TemperatureUnit unit) {
    return "%.0f %s"
        .formatted(unit.value(TemperatureChange.ofKelvins(kelvins)), unit.differenceSymbol());
  }

  private static String backWords(OptionalDouble back) {
    return back.isPresent() ? "back after " + minutes(back.getAsDouble()) : "not back";
  }

  /** "1:32:05": hours, minutes and seconds of the log. */
  static String clock(double seconds) {
    long all = Math.round(seconds);
    return "%d:%02d:%02d".formatted(all / 3600, all / 60 % 60, all % 60);
  }

  /** "85 s", "4 min 35 s". */
  static String minutes(double seconds) {
    long all = Math.round(seconds);
    if (all < 120) {
      return all + " s";
    }
    return all % 60 == 0 ? all / 60 + " min" : all / 60 + " min " + all % 60 + " s";
  }
}
