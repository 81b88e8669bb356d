package org.heatwright.app.firings;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.store.FiringEntry;
import org.heatwright.app.store.FiringShelf;
import org.heatwright.app.store.Store;
import org.heatwright.schedule.Schedule;

/**
 * The book of records: what was planned, keyed and measured in each firing, and how it came out.
 * Nothing is lost: what is taken back or put away can be had again. Safe for use from several
 * threads.
 *
 * <p>What a person told wrong throws {@link InputException}, whose file name is the field.
 */
public final class FiringBook {

  /** A display shows nothing outside, °C. */
  private static final double COLDEST_CELSIUS = -40;

  private static final double HOTTEST_CELSIUS = 1500;

  /** No piece is left in so long, s: what is longer was forgotten to be stopped. */
  private static final int LONGEST_PIECE_SECONDS = 7200;

  private static final int LONGEST_TEXT = 4000;
  private static final int LARGEST_PICTURE = 12_000_000;

  /** Clocks of two machines may differ by this, s. */
  private static final long CLOCKS_DIFFER_SECONDS = 120;

  private final FiringShelf shelf;
  private final Clock clock;

  public FiringBook(Store store, Clock clock) {
    this.shelf = store.firings();
    this.clock = clock;
  }

  /** Every firing that was not put away, the one pressed last first. */
  public List<FiringRecord> all() {
    return shelf.all().stream().map(FiringRecord::new).toList();
  }

  public Optional<FiringRecord> find(String id) {
    return shelf.find(id).map(FiringRecord::new);
  }

  /** Puts a firing into the book; id and times are given here. */
  public FiringRecord put(FiringEntry firing) {
    return new FiringRecord(shelf.put(firing));
  }

  /**
   * Start was pressed.
   *
   * @param held what the slot holds by the register, where it knows
   * @param standing how sure that is, a sentence
   */
  public void pressed(FiringRecord firing, Instant at, Optional<Schedule> held, String standing) {
    requirePast(at);
    held.ifPresent(
        schedule ->
            tell(
                firing,
                Happening.KEYED,
                at,
                OptionalDouble.empty(),
                "# " + standing.replace('\n', ' ') + "\n" + ScheduleFile.write(schedule)));
    tell(firing, Happening.PRESSED, at, OptionalDouble.empty(), "");
  }

  /** The display said so. */
  public String shown(FiringRecord firing, Instant at, double celsius) {
    requirePast(at);
    requirePressed(firing, at);
    if (!(celsius >= COLDEST_CELSIUS && celsius <= HOTTEST_CELSIUS)) {
      throw InputException.in(
          "shows",
          "a kiln's display says something between %.0f and %.0f °C, not %.0f °C."
              .formatted(COLDEST_CELSIUS, HOTTEST_CELSIUS, celsius));
    }
    return tell(firing, Happening.SHOWN, at, OptionalDouble.of(celsius), "");
  }

  /**
   * A piece was in the hot kiln. The same piece told again changes nothing: who tells it may not
   * have heard the answer.
   *
   * @param shut when the door shut behind it; one kiln has one door
   * @param seconds until it came out, 1 to 7200
   */
  public synchronized void piece(FiringRecord firing, Instant shut, int seconds) {
    requirePast(shut);
    requirePressed(firing, shut);
    if (seconds < 1 || seconds > LONGEST_PIECE_SECONDS) {
      throw InputException.in(
          "seconds",
          "a piece is in for 1 to %d s, not %d s.".formatted(LONGEST_PIECE_SECONDS, seconds));
    }
    if (piece(firing, shut).isEmpty()) {
      tell(firing, Happening.PIECE, shut, OptionalDouble.empty(), Integer.toString(seconds));
    }
  }

  /** Takes back the piece behind which the door shut then, where it was told. */
  public synchronized void takePieceBack(FiringRecord firing, Instant shut) {
    piece(firing, shut).ifPresent(told -> takeBack(firing, told.id(), true));
  }

  private Optional<FiringEntry.Told> piece(FiringRecord firing, Instant shut) {
    return find(firing.id()).orElse(firing).all(Happening.PIECE).stream()
        .filter(told -> told.at().equals(shut))
        .findFirst();
  }

  /** Something worth knowing later. */
  public String note(FiringRecord firing, Instant at, String text) {
    return tell(firing, Happening.NOTE, at, OptionalDouble.empty(), required("note", text));
  }

  /** How it came out. */
  public String result(FiringRecord firing, Instant at, String outcome, String note) {
    requirePressed(firing, at);
    String text = required("outcome", outcome) + (note.isBlank() ? "" : "\n" + limited(note));
    return tell(firing, Happening.RESULT, at, OptionalDouble.empty(), text);
  }

  /** The work is out, or the firing was stopped; why, where it was stopped. */
  public String out(FiringRecord firing, Instant at, String why) {
    requirePast(at);
    requirePressed(firing, at);
    return tell(firing, Happening.OUT, at, OptionalDouble.empty(), limited(why));
  }

  /**
   * A picture of it.
   *
   * @param picture JPEG, PNG or WebP
   */
  public void photo(FiringRecord firing, byte[] picture, String caption) {
    if (picture.length > LARGEST_PICTURE) {
      throw InputException.in(
          "photo", "the picture is larger than %d MB; take a smaller one.".formatted(12));
    }
    String media =
        Pictures.mediaType(picture)
            .orElseThrow(
                () ->
                    InputException.in("photo", "that is no picture: choose a JPEG, PNG or WebP."));
    shelf.tell(
        firing.id(),
        new FiringEntry.Told(
            "", Happening.PHOTO.word(), now(), OptionalDouble.empty(), limited(caption)),
        new FiringEntry.Photo(media, picture));
  }

  public Optional<FiringEntry.Photo> photo(String line) {
    return shelf.photo(line);
  }

  /** Takes a line back, or puts it back. */
  public void takeBack(FiringRecord firing, String line, boolean back) {
    shelf.takeBack(firing.id(), line, back);
  }

  /** Puts a firing away, or puts it back. */
  public void remove(FiringRecord firing, boolean away) {
    shelf.remove(firing.id(), away);
  }

  /** The moment, as the store can keep it. */
  public Instant now() {
    return Instant.ofEpochMilli(clock.millis());
  }

  private String tell(
      FiringRecord firing, Happening kind, Instant at, OptionalDouble celsius, String text) {
    return shelf.tell(firing.id(), new FiringEntry.Told("", kind.word(), at, celsius, text));
  }

  private void requirePast(Instant at) {
    if (at.isAfter(now().plusSeconds(CLOCKS_DIFFER_SECONDS))) {
      throw InputException.in("at", "that is still to come; give a time that has passed.");
    }
  }

  private static void requirePressed(FiringRecord firing, Instant at) {
    Instant pressed =
        firing
            .pressed()
            .orElseThrow(
                () -> InputException.in("at", "start was not pressed yet: tell that first."));
    if (at.isBefore(pressed.minusSeconds(CLOCKS_DIFFER_SECONDS))) {
      throw InputException.in("at", "that is before start was pressed; give a later time.");
    }
  }

  private static String required(String field, String text) {
    if (text.isBlank()) {
      throw InputException.in(field, "it is empty; write a few words.");
    }
    return limited(text);
  }

  private static String limited(String text) {
    String stripped = text.strip();
    return stripped.length() > LONGEST_TEXT ? stripped.substring(0, LONGEST_TEXT) : stripped;
  }
}
