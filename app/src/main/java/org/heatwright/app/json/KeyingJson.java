package org.heatwright.app.json;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.heatwright.app.files.YamlValue;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.human.SlipEstimate;
import org.heatwright.keypad.keying.KeyText;
import org.heatwright.keypad.keying.KeyingSheet;

/** What {@code keying --json} prints. {@code steps} is empty if the program does not fit. */
public record KeyingJson(
    String schedule,
    String keypad,
    int slot,
    boolean fits,
    String unit,
    ScheduleJson expressible,
    List<ValueJson> values,
    List<NoteJson> notes,
    CheckFiguresJson checkFigures,
    List<StepJson> steps,
    Optional<Long> byHandSeconds,
    Optional<String> timesOrigin,
    Optional<SlipsJson> slips,
    List<String> register) {

  /**
   * How likely it is that a slip stays, as shares with the least, usual and most slips a key:
   * unchecked, looked over by eye, read back blind.
   */
  public record SlipsJson(
      int keys,
      List<Double> unchecked,
      List<Double> byEye,
      List<Double> readBack,
      List<String> hidden,
      String words,
      String origin) {}

  /** One value to key; {@code segment} 0 is the whole program. */
  public record ValueJson(int segment, String kind, String digits, String meaning) {}

  /** A difference between what was asked and what the keypad can express. */
  public record NoteJson(String kind, OptionalInt segment, String message) {}

  /** Figures to check by eye; {@code sumOfTargets} is in the unit in force. */
  public record CheckFiguresJson(
      int segments, double sumOfTargets, long totalMinutes, String firstUnused) {}

  /**
   * One prompt.
   *
   * @param keys the keys one by one, as {@link KeyText} writes them
   */
  public record StepJson(
      int number,
      String prompt,
      String showsBefore,
      String press,
      String showsAfter,
      String meaning,
      List<String> keys) {}

  /** The record of a fitted program and its keying sheet. */
  public static KeyingJson of(
      FittedProgram program,
      String keypad,
      int slot,
      Optional<KeyingSheet> sheet,
      Optional<SlipEstimate> slips,
      List<String> register) {
    var figures = program.checkFigures();
    return new KeyingJson(
        program.requested().name(),
        keypad,
        slot,
        program.fits(),
        program.unit().letter(),
        ScheduleJson.of(program.expressible()),
        program.values().stream()
            .map(v -> new ValueJson(v.segment(), YamlValue.word(v.kind()), v.digits(), v.meaning()))
            .toList(),
        program.notes().stream()
            .map(n -> new NoteJson(YamlValue.word(n.kind()), n.segment(), n.message()))
            .toList(),
        new CheckFiguresJson(
            figures.segments(),
            figures.sumOfTargets(),
            figures.totalMinutes(),
            figures.firstUnused()),
        sheet.map(KeyingJson::steps).orElse(List.of()),
        sheet.map(s -> s.byHand().toSeconds()),
        sheet.map(KeyingSheet::timesOrigin),
        slips.map(KeyingJson::slips),
        register);
  }

  private static SlipsJson slips(SlipEstimate slips) {
    return new SlipsJson(
        slips.keys(),
        shares(slips.unchecked()),
        shares(slips.byEye()),
        shares(slips.readBack()),
        slips.hidden(),
        slips.words(),
        SlipEstimate.ORIGIN.words());
  }

  private static List<Double> shares(SlipEstimate.Chance chance) {
    return List.of(chance.lowShare(), chance.usualShare(), chance.highShare());
  }

  private static List<StepJson> steps(KeyingSheet sheet) {
    return sheet.steps().stream()
        .map(
            s ->
                new StepJson(
                    s.number(),
                    s.prompt(),
                    s.showsBefore(),
                    s.press(),
                    s.showsAfter(),
                    s.meaning(),
                    Stream.concat(s.make().stream(), s.go().stream()).map(KeyText::write).toList()))
        .toList();
  }
}
