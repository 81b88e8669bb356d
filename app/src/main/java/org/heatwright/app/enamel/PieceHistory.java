package org.heatwright.app.enamel;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.heatwright.work.EnamelWork;
import org.heatwright.work.enamel.LoggedPieces;
import org.heatwright.work.enamel.Look;

/**
 * The firings of one piece over all its sessions, by the name that the logs give it.
 *
 * @param name e.g. "brooch 3"
 * @param firings in order
 * @param usualMost how many firings its metal usually stands
 */
public record PieceHistory(String name, List<Fired> firings, int usualMost) {

  private static final Pattern COAT = Pattern.compile("coat\\s+(\\d{1,2})");

  /**
   * One of its firings.
   *
   * @param log which log
   * @param coat which coat, where the log says so
   * @param place where in the kiln, or empty
   * @param firing what happened
   */
  public record Fired(String log, OptionalInt coat, String place, LoggedPieces.Firing firing) {}

  public PieceHistory {
    firings = List.copyOf(firings);
  }

  /** The named pieces of some sessions, in the order in which they come. */
  public static List<PieceHistory> of(List<LoggedSession> sessions, EnamelWork work) {
    Map<String, List<Fired>> found = new LinkedHashMap<>();
    for (LoggedSession session : sessions) {
      for (LoggedPieces.Firing firing : session.pieces().firings()) {
        if (firing.name().isEmpty()) {
          continue;
        }
        String[] parts = firing.name().split("\\s*[,;]\\s*", -1);
        OptionalInt coat = OptionalInt.empty();
        List<String> place = new ArrayList<>();
        for (int i = 1; i < parts.length; i++) {
          Matcher told = COAT.matcher(parts[i].toLowerCase(Locale.ROOT));
          if (told.matches()) {
            coat = OptionalInt.of(Integer.parseInt(told.group(1)));
          } else if (!parts[i].isBlank()) {
            place.add(parts[i].strip());
          }
        }
        found
            .computeIfAbsent(parts[0].strip(), name -> new ArrayList<>())
            .add(new Fired(session.name(), coat, String.join(", ", place), firing));
      }
    }
    return found.entrySet().stream()
        .map(
            entry ->
                new PieceHistory(entry.getKey(), entry.getValue(), work.metal().usualFirings()))
        .toList();
  }

  /** All its heat-work, s. */
  public double heatSeconds() {
    return firings.stream().mapToDouble(fired -> fired.firing().heatSeconds()).sum();
  }

  /** "brooch 3: 4 firings, coats 1 to 3, heat-work 9 min 20 s; last glossy, left." */
  public String words() {
    Fired last = firings.get(firings.size() - 1);
    return words(
        name,
        firings.stream().map(Fired::coat).toList(),
        OptionalDouble.of(heatSeconds()),
        last.firing().look(),
        last.place(),
        usualMost);
  }

  /**
   * The same of firings from anywhere.
   *
   * @param coats one a firing, where it was told
   * @param heatSeconds all their heat-work, where it may be added up, s
   * @param look of the last firing
   * @param place of the last firing, or empty
   */
  static String words(
      String name,
      List<OptionalInt> coats,
      OptionalDouble heatSeconds,
      Look look,
      String place,
      int usualMost) {
    TreeSet<Integer> told = new TreeSet<>();
    coats.forEach(coat -> coat.ifPresent(told::add));
    String coated =
        told.isEmpty()
            ? ""
            : told.size() == 1
                ? ", coat " + told.first()
                : ", coats %d to %d".formatted(told.first(), told.last());
    String many =
        coats.size() >= usualMost ? " Its metal usually stands about %d.".formatted(usualMost) : "";
    String heat =
        heatSeconds.isPresent()
            ? ", heat-work " + LoggedSession.minutes(heatSeconds.getAsDouble())
            : "";
    return "%s: %d firing%s%s%s; last %s%s.%s"
        .formatted(
            name,
            coats.size(),
            coats.size() == 1 ? "" : "s",
            coated,
            heat,
            look.words(),
            place.isEmpty() ? "" : ", " + place,
            many);
  }
}
