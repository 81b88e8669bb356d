package org.heatwright.keypad.keying;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.heatwright.keypad.TestKeypads.burnout;
import static org.heatwright.keypad.TestKeypads.celsius;
import static org.heatwright.keypad.TestKeypads.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.Readback;
import org.heatwright.keypad.ReadbackQuestion;
import org.heatwright.keypad.TestKeypads;
import org.heatwright.schedule.Schedule;
import org.heatwright.schedule.Segment;
import org.heatwright.units.TemperatureUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class KeyingPlannerTest {

  private static KeyingSheet sheet(Keypad keypad, Schedule schedule, Optional<Schedule> held) {
    return KeyingPlanner.plan(KeypadFit.fit(schedule, keypad), keypad, 3, held);
  }

  private static KeyingStep step(KeyingSheet sheet, String prompt) {
    return sheet.steps().stream()
        .filter(s -> s.prompt().contains(prompt))
        .findFirst()
        .orElseThrow();
  }

  static List<Keypad> keypads() {
    return TestKeypads.all();
  }

  @Test
  void digitsAreTypedAndConfirmed() {
    KeyingSheet sheet = sheet(TestKeypads.digits(), burnout(), Optional.empty());
    assertThat(step(sheet, "segment 3 target").press()).isEqualTo("type 7 3 0, then press confirm");
    assertThat(step(sheet, "segment 3 target").showsAfter()).isEqualTo("730");
    assertThat(step(sheet, "segment 3 rate").press()).isEqualTo("type 9 9 9, then press confirm");
    assertThat(step(sheet, "segment 3 rate").meaning()).isEqualTo("full power up");
    // Without a point key the digits fill up from the right: 03:20.
    assertThat(step(sheet, "start delay").press()).isEqualTo("type 3 2 0, then press confirm");
    assertThat(step(sheet, "number of segments").press()).isEqualTo("type 4, then press confirm");
  }

  @ParameterizedTest
  @MethodSource("keypads")
  void everyValueIsKeyedInOrderAndTheSheetEndsWithTheReview(Keypad keypad) {
    FittedProgram program = KeypadFit.fit(burnout(), keypad);
    KeyingSheet sheet = KeyingPlanner.plan(program, keypad, 3, Optional.empty());
    List<String> after = new ArrayList<>();
    sheet.steps().forEach(s -> after.add(s.showsAfter()));
    int from = 0;
    for (KeyedValue value : program.values()) {
      int at = after.subList(from, after.size()).indexOf(value.digits());
      assertThat(at).as(value.place()).isNotNegative();
      from += at + 1;
    }
    assertThat(sheet.steps()).extracting(KeyingStep::number).startsWith(1, 2, 3);
    List<KeyingStep> last = sheet.steps().subList(sheet.steps().size() - 4, sheet.steps().size());
    assertThat(last).extracting(KeyingStep::prompt).contains("review", "read back");
    assertThat(last.get(3).meaning()).contains("do not read from this sheet");
    assertThat(sheet.byHand().toSeconds()).isBetween(40L, 600L);
    assertThat(sheet.timesOrigin()).contains("Card, Moran and Newell (1980, 1983)", "our estimate");
  }

  @Test
  void theFirstUnusedSegmentMustBeEmptyBeforeSaving() {
    KeyingSheet sheet = sheet(TestKeypads.steps(), burnout(), Optional.empty());
    assertThat(step(sheet, "segment 5 (unused)").showsAfter()).isEqualTo("End");
    KeyingStep save = step(sheet, "save");
    assertThat(save.press()).isEqualTo("hold next 3 s");
    assertThat(save.showsAfter()).isEqualTo("StO");
    assertThat(save.showsBefore()).contains("60 s");
    assertThat(save.meaning()).contains("must read End");
    assertThat(step(sheet, "read back").press()).contains("touch no other key");
    assertThat(sheet(TestKeypads.knob(), burnout(), Optional.empty()).steps())
        .extracting(KeyingStep::prompt)
        .anyMatch(p -> p.contains("segment 5 (unused)"))
        .anyMatch(p -> p.contains("segment 6 (unused)"));
  }

  @Test
  void aPromptCarriesTheLabelOfTheFieldThatIsKeyed() {
    // Keyed at the rate, reviewed at the target.
    Keypad keypad = TestKeypads.knob();
    assertThat(step(sheet(keypad, burnout(), Optional.empty()), "(unused)").prompt())
        .isEqualTo("P5.r (segment 5 (unused))");
    assertThat(Readback.questions(KeypadFit.fit(burnout(), keypad), keypad))
        .extracting(ReadbackQuestion::label)
        .contains("P5.t");
  }

  @Test
  void whatTheSlotHoldsIsOnlyConfirmed() {
    List<Segment> changed = new ArrayList<>(burnout().segments());
    changed.set(2, celsius(200, 732, 240));
    Schedule wanted = burnout().withSegments(changed);
    KeyingSheet blank = sheet(TestKeypads.steps(), wanted, Optional.empty());
    KeyingSheet sheet = sheet(TestKeypads.steps(), wanted, Optional.of(burnout()));
    KeyingStep target = step(sheet, "segment 3 target");
    assertThat(target.showsBefore()).isEqualTo("730");
    assertThat(target.press()).isEqualTo("tap up twice, then press next");
    assertThat(step(sheet, "segment 3 rate").showsBefore()).isEqualTo("FULL");
    assertThat(step(sheet, "segment 2 target").press()).isEqualTo("just press next");
    // Past the last change it saves: this keypad can save from any value.
    assertThat(sheet.steps().get(target.number()).prompt()).isEqualTo("save");
    assertThat(sheet.steps()).hasSizeLessThan(blank.steps().size());
    assertThat(sheet.byHand()).isLessThan(blank.byHand());
  }

  @Test
  void aLongerProgramInTheSlotIsCutByTheMark() {
    List<Segment> longer = new ArrayList<>(burnout().segments());
    longer.add(celsius(100, 300, 30));
    KeyingSheet sheet =
        sheet(TestKeypads.steps(), burnout(), Optional.of(burnout().withSegments(longer)));
    KeyingStep end = step(sheet, "segment 5 (unused)");
    assertThat(end.showsBefore()).isEqualTo("100");
    assertThat(end.press()).isEqualTo("tap down 20 times, then press next");
    assertThat(end.showsAfter()).isEqualTo("End");
  }

  @Test
  void aShorterProgramInTheSlotShowsItsMarkWhereASegmentFollows() {
    Schedule shorter = burnout().withSegments(burnout().segments().subList(0, 3));
    KeyingSheet sheet = sheet(TestKeypads.steps(), burnout(), Optional.of(shorter));
    assertThat(step(sheet, "segment 4 rate").showsBefore()).isEqualTo("End");
    assertThat(step(sheet, "segment 4 target").showsBefore()).isEqualTo("what was stored");
  }

  @Test
  void aSlotKeyedInTheOtherUnitIsNotTrusted() {
    KeyingSheet sheet =
        sheet(
            TestKeypads.steps(),
            burnout(),
            Optional.of(burnout().withUnit(TemperatureUnit.FAHRENHEIT)));
    assertThat(step(sheet, "segment 2 target").showsBefore()).isEqualTo("what was stored");
  }

  @Test
  void theUnitComesFirstWhereItCanBeSwitched() {
    KeyingSheet sheet = sheet(TestKeypads.steps(), burnout(), Optional.empty());
    assertThat(sheet.steps().get(0).prompt()).isEqualTo("unit in force");
    assertThat(sheet.steps().get(0).press())
        .isEqualTo(
            "look at the unit (settings display); settle the unit by the cold kiln's reading against a thermometer; if it is °F, switch it first");
    // 730 °F is 387.8 °C.
    assertThat(sheet.steps().get(0).meaning()).contains("Segment 3: 730 °C meant", "387.8 °C");
    assertThat(sheet(TestKeypads.digits(), burnout(), Optional.empty()).steps().get(0).prompt())
        .isEqualTo("open programming");
  }

  @Test
  void aSheetInAnotherUnitThanTheScheduleSaysWhichNumbersToKey() {
    Schedule fahrenheit =
        Schedule.of(
            "old-card",
            TemperatureUnit.FAHRENHEIT,
            List.of(TestKeypads.segment(TemperatureUnit.FAHRENHEIT, 180, 900, 60)));
    KeyingStep first = sheet(TestKeypads.digits(), fahrenheit, Optional.empty()).steps().get(0);
    assertThat(first.press()).contains("key the numbers of this sheet");
    assertThat(first.meaning()).contains("900 °F meant (482.2 °C)", "1652 °F");
  }

  @Test
  void whatDoesNotFitOrHasNoSlotIsRefused() {
    Keypad keypad = TestKeypads.steps();
    FittedProgram program = KeypadFit.fit(burnout(), keypad);
    assertThatThrownBy(() -> KeyingPlanner.plan(program, keypad, 5, Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("There is no slot 5: the keypad has slots 1 to 4.");
    FittedProgram refused = KeypadFit.fit(schedule(celsius(100, 1200, 10)), keypad);
    assertThatThrownBy(() -> KeyingPlanner.plan(refused, keypad, 1, Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("does not fit this keypad");
  }
}
