package org.heatwright.work.causes;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.heatwright.work.causes.Cause.Indication;

/**
 * Causes in the order in which to look for them.
 *
 * @param causes what may be behind it, the likeliest first
 * @param dismissed what the record contradicts
 * @param questions what is not known and would change which cause stands first, or the order of the
 *     first three; the most telling first
 * @param proposed the one cause whose change to try, or whose test to do first: the first of {@code
 *     causes}, where it stands apart from the second
 */
public record Ranking(
    List<Ranked> causes,
    List<Dismissed> dismissed,
    List<Clue> questions,
    Optional<Ranked> proposed) {

  /** From here on a cause is likely: seven to one over what speaks for nothing. Estimate. */
  private static final double LIKELY_FACTOR = 2.0;

  /** Below here it is unlikely. Estimate. */
  private static final double UNLIKELY_FACTOR = -0.7;

  /** What is one in ten of the first is not called likely beside it. Estimate. */
  private static final double BEHIND_FACTOR = 2.3;

  private static final int MOST_QUESTIONS = 5;
  private static final int FIRST_FEW = 3;

  /** How likely, in words: a figure would claim more than is known. */
  public enum Standing {
    LIKELY("likely"),
    POSSIBLE("possible"),
    UNLIKELY("unlikely");

    private final String words;

    Standing(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * A cause in its place.
   *
   * @param cause what
   * @param standing how likely
   * @param logOddsFactor sum of the weights, natural logarithm
   * @param why what is known that speaks for it, a sentence each
   * @param against what is known that speaks against it
   */
  public record Ranked(
      Cause cause,
      Standing standing,
      double logOddsFactor,
      List<String> why,
      List<String> against) {
    public Ranked {
      why = List.copyOf(why);
      against = List.copyOf(against);
    }
  }

  /**
   * A cause that the record contradicts.
   *
   * @param cause what
   * @param because what contradicts it, a sentence
   */
  public record Dismissed(Cause cause, String because) {}

  public Ranking {
    causes = List.copyOf(causes);
    dismissed = List.copyOf(dismissed);
    questions = List.copyOf(questions);
  }

  /** Ranks; the order of the suspects does not matter. */
  public static Ranking of(List<Suspect> suspects, Facts facts) {
    List<Scored> scored = scored(suspects, facts);
    double first = scored.isEmpty() ? 0 : scored.get(0).total();
    List<Ranked> causes = scored.stream().map(one -> ranked(one, first, facts)).toList();
    List<Dismissed> dismissed =
        suspects.stream()
            .flatMap(suspect -> contradiction(suspect.cause(), facts).stream())
            .sorted(Comparator.comparing(d -> d.cause().code()))
            .toList();
    return new Ranking(causes, dismissed, questions(suspects, scored, facts), proposed(causes));
  }

  private record Scored(Suspect suspect, double total) {}

  private static List<Scored> scored(List<Suspect> suspects, Facts facts) {
    return suspects.stream()
        .map(suspect -> new Scored(suspect, total(suspect, facts)))
        .filter(one -> one.total() > Double.NEGATIVE_INFINITY)
        .sorted(
            Comparator.comparingDouble((Scored one) -> -one.total())
                .thenComparing(one -> one.suspect().cause().code()))
        .toList();
  }

  private static double total(Suspect suspect, Facts facts) {
    double sum = suspect.startFactor();
    for (Indication indication : suspect.cause().indications()) {
      sum += facts.of(indication.clue()).map(f -> indication.factor(f.isSo())).orElse(0.0);
    }
    return sum;
  }

  private static Ranked ranked(Scored one, double first, Facts facts) {
    List<String> why = new ArrayList<>();
    List<String> against = new ArrayList<>();
    for (Indication indication : one.suspect().cause().indications()) {
      facts
          .of(indication.clue())
          .ifPresent(
              fact -> {
                double factor = indication.factor(fact.isSo());
                if (factor > 0) {
                  why.add(fact.words());
                } else if (factor < 0) {
                  against.add(fact.words());
                }
              });
    }
    return new Ranked(
        one.suspect().cause(), standing(one.total(), first), one.total(), why, against);
  }

  private static Standing standing(double total, double first) {
    if (total < UNLIKELY_FACTOR) {
      return Standing.UNLIKELY;
    }
    return total >= LIKELY_FACTOR && first - total < BEHIND_FACTOR
        ? Standing.LIKELY
        : Standing.POSSIBLE;
  }

  private static Optional<Dismissed> contradiction(Cause cause, Facts facts) {
    return cause.indications().stream()
        .flatMap(
            indication ->
                facts
                    .of(indication.clue())
                    .filter(f -> indication.factor(f.isSo()) == Double.NEGATIVE_INFINITY)
                    .map(f -> new Dismissed(cause, f.words()))
                    .stream())
        .findFirst();
  }

  /** Two that stand level leave it open which to try: then a test comes before a change. */
  private static Optional<Ranked> proposed(List<Ranked> causes) {
    if (causes.isEmpty() || causes.get(0).standing() == Standing.UNLIKELY) {
      return Optional.empty();
    }
    boolean apart =
        causes.size() == 1
            || causes.get(0).logOddsFactor() - causes.get(1).logOddsFactor() > 0.1
            || causes.get(0).standing() == Standing.LIKELY;
    return apart ? Optional.of(causes.get(0)) : Optional.empty();
  }

  // ---- what to ask

  private record Telling(Clue clue, boolean leader, double moves) {}

  private static List<Clue> questions(List<Suspect> suspects, List<Scored> now, Facts facts) {
    Set<Clue> asked = new LinkedHashSet<>();
    suspects.forEach(s -> s.cause().indications().forEach(i -> asked.add(i.clue())));
    List<Telling> telling = new ArrayList<>();
    for (Clue clue : asked) {
      if (facts.of(clue).isPresent()) {
        continue;
      }
      List<Scored> ifSo = scored(suspects, facts.told(clue, true));
      List<Scored> ifNot = scored(suspects, facts.told(clue, false));
      boolean leader =
          !first(ifSo, 1).equals(first(now, 1)) || !first(ifNot, 1).equals(first(now, 1));
      boolean few =
          !first(ifSo, FIRST_FEW).equals(first(now, FIRST_FEW))
              || !first(ifNot, FIRST_FEW).equals(first(now, FIRST_FEW));
      if (leader || few) {
        telling.add(new Telling(clue, leader, moves(suspects, clue, now)));
      }
    }
    return telling.stream()
        .sorted(
            Comparator.comparing((Telling t) -> !t.leader())
                .thenComparing(t -> -t.moves())
                .thenComparing(Telling::clue))
        .limit(MOST_QUESTIONS)
        .map(Telling::clue)
        .toList();
  }

  private static List<String> first(List<Scored> scored, int count) {
    return scored.stream().limit(count).map(s -> s.suspect().cause().code()).toList();
  }

  /** By how much a clue would move the cause that it touches highest up. */
  private static double moves(List<Suspect> suspects, Clue clue, List<Scored> now) {
    double most = 0;
    Set<String> standing = new HashSet<>();
    now.forEach(s -> standing.add(s.suspect().cause().code()));
    for (Suspect suspect : suspects) {
      for (Indication indication : suspect.cause().indications()) {
        if (indication.clue() == clue && standing.contains(suspect.cause().code())) {
          most =
              Math.max(
                  most,
                  suspect.startFactor()
                      + Math.max(
                          Math.abs(Math.max(indication.seenFactor(), -6)),
                          Math.abs(Math.max(indication.absentFactor(), -6))));
        }
      }
    }
    return most;
  }
}
