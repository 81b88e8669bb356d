package org.heatwright.pocket;

import java.util.Optional;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.Keypad;
import org.teavm.jso.JSExport;

/**
 * The door between the page's script and the core: texts of JSON in, texts of JSON out. Opened once
 * for one program on one keypad.
 */
public final class Pocket {

  private final ReadbackTalk readback;
  private final RehearsalTalk rehearsal;

  private Pocket(Keypad keypad, FittedProgram program, int slot, Optional<FittedProgram> held) {
    this.readback = new ReadbackTalk(keypad, program, slot);
    this.rehearsal = new RehearsalTalk(keypad, program, slot, held);
  }

  /**
   * All that the page's script has to know, as a text that may stand in a script element.
   *
   * @param held what the slot holds now, if it is known: the rehearsal starts there, as the sheet
   * @throws IllegalArgumentException if the program does not fit: there is nothing to key then
   */
  public static String data(
      Keypad keypad, FittedProgram program, int slot, Optional<FittedProgram> held) {
    if (!program.fits()) {
      throw new IllegalArgumentException(
          "There is nothing to key: the schedule '%s' does not fit the keypad '%s'."
              .formatted(program.requested().name(), keypad.name()));
    }
    return JsonText.write(
        KeypadText.map(
            "keypad",
            KeypadText.write(keypad),
            "program",
            ProgramText.write(program),
            "slot",
            slot,
            "held",
            held.filter(FittedProgram::fits).map(ProgramText::write)));
  }

  /**
   * @param data what {@link #data} gave
   */
  @JSExport
  public static Pocket openPocket(String data) {
    Fields from = Fields.read(data);
    return new Pocket(
        KeypadText.read(from.map("keypad")),
        ProgramText.read(from.map("program")),
        from.whole("slot"),
        from.optionalMap("held").map(ProgramText::read));
  }

  /** What the read-back asks, in display order; see {@link ReadbackTalk#questions}. */
  @JSExport
  public String questions() {
    return JsonText.write(readback.questions());
  }

  /** What came of the answers; see {@link ReadbackTalk#answer}. */
  @JSExport
  public String compare(String typed) {
    return JsonText.write(readback.answer(Fields.read(typed)));
  }

  /** The keys of the drawn keypad; see {@link RehearsalTalk#keys}. */
  @JSExport
  public String keys() {
    return JsonText.write(rehearsal.keys());
  }

  /** The rehearsal from its beginning. */
  @JSExport
  public String restart() {
    return JsonText.write(rehearsal.restart());
  }

  /** The rehearsal as it stands. */
  @JSExport
  public String now() {
    return JsonText.write(rehearsal.now());
  }

  /** What an action leads to; see {@link RehearsalTalk#press}. */
  @JSExport
  public String press(String action) {
    return JsonText.write(rehearsal.press(Fields.read(action)));
  }

  /** What the display would show if an action ended now; see {@link RehearsalTalk#peek}. */
  @JSExport
  public String peek(String action) {
    return JsonText.write(rehearsal.peek(Fields.read(action)));
  }

  /** What a power cut leads to. */
  @JSExport
  public String powerCut() {
    return JsonText.write(rehearsal.powerCut());
  }

  /** What leaving it alone leads to; see {@link RehearsalTalk#untouched}. */
  @JSExport
  public String untouched() {
    return JsonText.write(rehearsal.untouched());
  }

  /** Takes the last action back. */
  @JSExport
  public String back() {
    return JsonText.write(rehearsal.back());
  }
}
