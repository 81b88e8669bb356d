package org.heatwright.app.web;

import java.util.ArrayList;
import java.util.List;
import org.heatwright.app.store.Archive;

/**
 * What came of an archive that was brought.
 *
 * @param told how many of what came, a line each; empty where nothing new did
 * @param done an archive was brought
 * @param error why not; empty where it was or none was
 */
public record Moved(List<String> told, boolean done, String error) {

  public Moved {
    told = List.copyOf(told);
  }

  static Moved nothing() {
    return new Moved(List.of(), false, "");
  }

  static Moved wrong(String sentence) {
    return new Moved(List.of(), false, sentence);
  }

  static Moved of(Archive.Brought brought) {
    List<String> told = new ArrayList<>();
    add(told, "Kilns, keypads, work and schedules: %d", brought.texts());
    add(told, "Logs: %d", brought.logs());
    add(told, "Firings in the book: %d", brought.firings());
    add(told, "Cards: %d", brought.cards());
    add(told, "Firings of named pieces: %d", brought.pieces());
    return new Moved(told, true, "");
  }

  private static void add(List<String> told, String line, int count) {
    if (count > 0) {
      told.add(line.formatted(count));
    }
  }
}
