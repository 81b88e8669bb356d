package org.heatwright.keypad;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a read-back asks and says, the same on the bench and on the page that is sent. */
public final class ReadbackWords {

  /** Room for values that a slot with too many segments would show. */
  private static final int SPARE_QUESTIONS = 3;

  /** A dropped segment leaves three values empty. */
  private static final int MOST_EMPTY = 3;

  private ReadbackWords() {}

  /**
   * What came of it, in words.
   *
   * @param kind right, open or wrong
   * @param head in two or three words
   * @param correction what to do now
   * @param more what else is to say
   */
  public record Told(Kind kind, String head, String correction, List<String> more) {

    public Told {
      more = List.copyOf(more);
    }
  }

  /** How it came out. */
  public enum Kind {
    RIGHT,
    /** Nothing is wrong, but it proves nothing yet. */
    OPEN,
    WRONG
  }

  /** The questions, and room for values that a slot with too many segments would show. */
  public static List<ReadbackQuestion> asked(FittedProgram program, Keypad keypad) {
    List<ReadbackQuestion> asked = new ArrayList<>(Readback.questions(program, keypad));
    for (int i = 0; i < SPARE_QUESTIONS; i++) {
      String label = "value %d, if there is one more".formatted(asked.size() + 1);
      asked.add(new ReadbackQuestion(asked.size() + 1, label, label, false));
    }
    return asked;
  }

  /** A question as it stands beside its field. */
  public static String label(ReadbackQuestion question) {
    return question.label().equals(question.words())
        ? question.words()
        : question.label() + ", " + question.words();
  }

  /** If too few values are shown to compare: comparing an empty form would only tell the plan. */
  public static Optional<Told> tooEmpty(FittedProgram program, Keypad keypad, int shown) {
    int empty = Readback.questions(program, keypad).size() - shown;
    return empty <= MOST_EMPTY
        ? Optional.empty()
        : Optional.of(
            new Told(
                Kind.OPEN,
                "Not compared yet",
                "%d values are empty. Type what the display shows; leave a field empty only if the display does not show that value."
                    .formatted(empty),
                List.of()));
  }

  /**
   * What came of a comparison.
   *
   * @param keypad whose review it was
   * @param slotTold whether the slot that the display shows was told: right values in an unknown
   *     slot prove nothing of the slot that will be started
   */
  public static Told told(ReadbackReport report, Keypad keypad, boolean slotTold) {
    List<String> more = new ArrayList<>(report.findings());
    report.verdicts().forEach(v -> more.remove(v.message())); // stands beside its field
    report.unproven().forEach(u -> more.add("Not shown by this check: " + u));
    if (report.outcome() == ReadbackReport.Outcome.NOT_PROVEN) {
      String correction =
          report.correction().orElse("Go through the review again from its first value.");
      more.removeIf(correction::equals);
      return new Told(Kind.WRONG, "Not yet", correction, more);
    }
    if (!slotTold) {
      return new Told(
          Kind.OPEN,
          "Values right, slot open",
          "Type the number of the slot that the display shows, then compare again.",
          more);
    }
    if (report.outcome() == ReadbackReport.Outcome.UNIT_OPEN) {
      return new Told(
          Kind.OPEN,
          "Values right, unit open",
          keypad.units().asked().isPresent()
              ? "Open the program again and look at its unit, without taking anything."
              : "Settle the unit below: a cold kiln's display against a thermometer beside it.",
          more);
    }
    return new Told(
        Kind.RIGHT,
        "Keyed as planned",
        "Every value the review shows is the plan's. It counts until the power is cut, the slot or the unit is changed, or somebody else fires the kiln.",
        more);
  }

  /** A check figure's text. */
  public static String text(ReadbackReport.Figure figure) {
    return figure.agrees()
        ? figure.planned() + ", agrees"
        : "planned %s, shown %s".formatted(figure.planned(), figure.shown());
  }

  /** A temperature as people type it; empty if it is none. */
  public static Optional<Double> degrees(String text) {
    String plain = Texts.clean(text);
    return plain.matches("-?\\d{1,4}(\\.\\d{1,2})?")
        ? Optional.of(Double.valueOf(plain))
        : Optional.empty();
  }

  /** Says which of the texts is no temperature; empty if all are, or are blank. */
  public static Optional<String> noTemperature(List<String> texts) {
    return texts.stream()
        .filter(text -> !Texts.clean(text).isEmpty() && degrees(text).isEmpty())
        .findFirst()
        .map(text -> "“%s” is no temperature: type the number alone, such as 19.".formatted(text));
  }
}
