package org.heatwright.keypad;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Was it keyed right? What the review shows, asked blind and compared with the plan by what each
 * text means in this keypad's form.
 */
public final class Readback {

  private Readback() {}

  /**
   * Where to look, in display order, without a hint of what should be there.
   *
   * @throws IllegalArgumentException if the program does not fit the keypad
   */
  public static List<ReadbackQuestion> questions(FittedProgram program, Keypad keypad) {
    program.requireFits();
    List<ReviewPlan.Item> items = ReviewPlan.of(program, keypad).items();
    List<ReadbackQuestion> questions = new ArrayList<>();
    for (ReviewPlan.Item item : items) {
      questions.add(
          new ReadbackQuestion(
              questions.size() + 1,
              ReviewPlan.label(keypad, item.segment(), item.kind()),
              ReviewPlan.words(keypad, item.segment(), item.kind()),
              ReviewPlan.digits(keypad, item.kind())));
    }
    return questions;
  }

  /** As the other {@code compare}, with no slot expected and no unit check made. */
  public static ReadbackReport compare(FittedProgram program, Keypad keypad, Shown shown) {
    return compare(program, keypad, shown, OptionalInt.empty(), Optional.empty());
  }

  /**
   * @param program the plan; must fit
   * @param keypad the keypad it was fitted to
   * @param shown what its review showed
   * @param slot the slot it was keyed into, if known
   * @param unitCheck a cold kiln's reading against a thermometer, if it was made
   * @throws IllegalArgumentException if the program does not fit the keypad
   */
  public static ReadbackReport compare(
      FittedProgram program,
      Keypad keypad,
      Shown shown,
      OptionalInt slot,
      Optional<UnitCheck.Result> unitCheck) {
    program.requireFits();
    return new Comparison(program, keypad, shown, slot, unitCheck).report();
  }
}
