package org.heatwright.app.enamel;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.app.files.YamlValue;
import org.heatwright.app.store.PieceEntry;
import org.heatwright.forecast.ClockWords;
import org.heatwright.inspect.Wording;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.enamel.LoggedPieces;
import org.heatwright.work.enamel.Look;

/**
 * All firings of one piece that were kept, from the logs of any number of sessions.
 *
 * @param name e.g. "brooch 3"
 * @param firings in order, one at least
 */
public record KeptPiece(String name, List<PieceEntry> firings) {

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);

  public KeptPiece {
    firings = List.copyOf(firings);
  }

  /** The pieces of a store's rows, which come piece by piece. */
  public static List<KeptPiece> of(List<PieceEntry> rows) {
    Map<String, List<PieceEntry>> found = new LinkedHashMap<>();
    rows.forEach(row -> found.computeIfAbsent(row.piece(), name -> new ArrayList<>()).add(row));
    return found.entrySet().stream()
        .map(entry -> new KeptPiece(entry.getKey(), entry.getValue()))
        .toList();
  }

  /**
   * The rows of one session: its named pieces.
   *
   * @param started when the log began, where it tells
   */
  public static List<PieceEntry> rows(
      LoggedSession session, String log, Optional<Instant> started, EnamelWork work, String kiln) {
    List<PieceEntry> rows = new ArrayList<>();
    for (PieceHistory history : PieceHistory.of(List.of(session), work)) {
      for (PieceHistory.Fired fired : history.firings()) {
        LoggedPieces.Firing firing = fired.firing();
        rows.add(
            new PieceEntry(
                history.name(),
                firing.number(),
                fired.coat(),
                fired.place(),
                log,
                kiln,
                YamlValue.word(work.metal()),
                started.map(start -> start.plusMillis(Math.round(1000 * firing.inSeconds()))),
                firing.inSeconds(),
                firing.staySeconds(),
                session.workingCelsius(),
                firing.heatSeconds(),
                firing.hottestCelsius(),
                YamlValue.word(firing.look())));
      }
    }
    return rows;
  }

  /** All its heat-work, s; empty where firings count theirs at different temperatures. */
  public OptionalDouble heatSeconds() {
    return firings.stream().mapToDouble(PieceEntry::workingCelsius).distinct().count() == 1
        ? OptionalDouble.of(firings.stream().mapToDouble(PieceEntry::heatSeconds).sum())
        : OptionalDouble.empty();
  }

  /** How many firings its metal usually stands. */
  public int usualMost() {
    return EnamelWork.Metal.valueOf(constant(last().metal())).usualFirings();
  }

  private PieceEntry last() {
    return firings.get(firings.size() - 1);
  }

  /** "brooch 3: 4 firings, coats 1 to 3, heat-work 9 min 20 s; last glossy, left." */
  public String words() {
    return PieceHistory.words(
        name,
        firings.stream().map(PieceEntry::coat).toList(),
        heatSeconds(),
        look(last()),
        last().place(),
        usualMost());
  }

  /** One line about a firing. */
  public static String words(PieceEntry firing, TemperatureUnit unit, ZoneId zone) {
    List<String> parts = new ArrayList<>();
    parts.add(
        firing
            .fired()
            .map(at -> at.atZone(zone))
            .map(at -> DAY.format(at) + " " + ClockWords.time(at))
            .orElseGet(() -> LoggedSession.clock(firing.inSeconds()) + " in the log"));
    firing.coat().ifPresent(coat -> parts.add("coat " + coat));
    if (!firing.place().isEmpty()) {
      parts.add(firing.place());
    }
    return "%s; %s in %s; heat-work %s at %s; %s; hottest %s (%s)"
        .formatted(
            String.join(", ", parts),
            LoggedSession.minutes(firing.staySeconds()),
            firing.kiln(),
            LoggedSession.minutes(firing.heatSeconds()),
            Wording.whole(firing.workingCelsius(), unit),
            look(firing).words(),
            Wording.whole(firing.hottestCelsius(), unit),
            firing.log());
  }

  private static Look look(PieceEntry firing) {
    return Look.valueOf(constant(firing.look()));
  }

  private static String constant(String word) {
    return word.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
