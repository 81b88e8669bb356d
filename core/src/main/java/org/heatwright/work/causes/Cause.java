package org.heatwright.work.causes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.material.Origin;

/**
 * Something that may be behind how a firing came out.
 *
 * @param code stable, in kebab-case
 * @param side whose matter it is: that decides what is to be learned from it
 * @param words what it is, a sentence or two without blame
 * @param indications what speaks for it and against it
 * @param trials what a person can do to tell, the cheapest first; at least one
 * @param change the one thing to do otherwise if it was this
 * @param caution what can hurt; empty where nothing more than usual can
 * @param origin where it is from
 */
public record Cause(
    String code,
    Side side,
    String words,
    List<Indication> indications,
    List<Trial> trials,
    Change change,
    Optional<String> caution,
    Origin origin) {

  /** Whose matter a cause is. */
  public enum Side {
    /** What was keyed or started. */
    KEYPAD("what was keyed"),
    /** The kiln, its sensor, its supply. */
    KILN("the kiln"),
    /** The schedule for this work. */
    SCHEDULE("the schedule"),
    /** How the work was made, loaded, taken out. */
    HANDLING("how it was made and handled"),
    /** What it is made of. */
    MATERIAL("the material");

    private final String words;

    Side(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * What a clue says about a cause, as natural logarithms of odds. Negative infinity rules it out.
   *
   * @param clue which
   * @param seenFactor what is added where it is so
   * @param absentFactor what is added where it is known not to be so
   */
  public record Indication(Clue clue, double seenFactor, double absentFactor) {
    public Indication {
      Objects.requireNonNull(clue, "clue");
      if (Double.isNaN(seenFactor)
          || Double.isNaN(absentFactor)
          || seenFactor == Double.POSITIVE_INFINITY
          || absentFactor == Double.POSITIVE_INFINITY) {
        throw new IllegalArgumentException("A clue cannot prove a cause beyond doubt.");
      }
    }

    /** What is added, given whether it is so. */
    double factor(boolean isSo) {
      return isSo ? seenFactor : absentFactor;
    }
  }

  public Cause {
    if (!code.matches("[a-z]+(-[a-z]+)*")) {
      throw new IllegalArgumentException("A code is in kebab-case, not '%s'.".formatted(code));
    }
    Objects.requireNonNull(side, "side");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(change, "change");
    Objects.requireNonNull(caution, "caution");
    Objects.requireNonNull(origin, "origin");
    indications = List.copyOf(indications);
    if (indications.stream().map(Indication::clue).distinct().count() != indications.size()) {
      throw new IllegalArgumentException("'%s' asks one clue twice.".formatted(code));
    }
    trials = trials.stream().sorted(Comparator.comparing(Trial::effort)).toList();
    if (trials.isEmpty()) {
      throw new IllegalArgumentException("'%s' needs a test.".formatted(code));
    }
  }

  /** How much a clue says; all of them {@code estimate:}, see {@code docs/models/causes.md}. */
  enum Weight {
    /** Twice as likely. */
    WEAK(Math.log(2)),
    /** Five times. */
    CLEAR(Math.log(5)),
    /** Twenty times. */
    STRONG(Math.log(20));

    private final double factor;

    Weight(double factor) {
      this.factor = factor;
    }

    double factor() {
      return factor;
    }
  }

  static Draft of(String code, Side side, Origin origin, String words) {
    return new Draft(code, side, origin, words);
  }

  /** A cause that is being written down. Belongs to the one who writes it. */
  static final class Draft {
    private final String code;
    private final Side side;
    private final Origin origin;
    private final String words;
    private final List<Indication> indications = new ArrayList<>();
    private final List<Trial> trials = new ArrayList<>();
    private String caution = "";

    private Draft(String code, Side side, Origin origin, String words) {
      this.code = code;
      this.side = side;
      this.origin = origin;
      this.words = words;
    }

    /** The record contradicts it where the clue is known not to be so. */
    Draft needs(Clue clue) {
      return add(clue, Weight.STRONG.factor(), Double.NEGATIVE_INFINITY);
    }

    /** The record contradicts it where the clue is known not to be so; it says less where it is. */
    Draft wants(Clue clue, Weight weight) {
      return add(clue, weight.factor(), Double.NEGATIVE_INFINITY);
    }

    /** Speaks for it; if it is known not to be so, half as much against it. */
    Draft by(Clue clue, Weight weight) {
      return add(clue, weight.factor(), -weight.factor() / 2);
    }

    /** Speaks for it where it is so, and says nothing where it is not. */
    Draft also(Clue clue, Weight weight) {
      return add(clue, weight.factor(), 0);
    }

    /** Speaks against it where it is so, and for it where it is not. */
    Draft unless(Clue clue, Weight weight) {
      return add(clue, -weight.factor(), weight.factor() / 2);
    }

    /** The record contradicts it where the clue is so. */
    Draft never(Clue clue) {
      return add(clue, Double.NEGATIVE_INFINITY, 0);
    }

    private Draft add(Clue clue, double seen, double absent) {
      indications.add(new Indication(clue, seen, absent));
      return this;
    }

    Draft trial(Trial.Effort effort, String doing) {
      trials.add(new Trial(effort, doing));
      return this;
    }

    Draft caution(String sentence) {
      caution = sentence;
      return this;
    }

    Cause change(String doing) {
      return made(new Change(doing, Optional.empty()));
    }

    Cause change(String doing, Edit edit) {
      return made(new Change(doing, Optional.of(edit)));
    }

    private Cause made(Change change) {
      return new Cause(
          code,
          side,
          words,
          indications,
          trials,
          change,
          caution.isEmpty() ? Optional.empty() : Optional.of(caution),
          origin);
    }
  }
}
