package org.heatwright.keypad.register;

/** What a proof knows the unit in force from. */
public enum UnitGround {
  FIXED("the keypad works in one unit only"),
  COLD_KILN("a cold kiln's display was compared with a thermometer"),
  PROGRAM("the program's own unit was among the values read"),
  SIGN("the unit's sign was read off the display"),
  REFUSED_IN_OTHER("not settled; in the other unit the keypad would refuse these targets");

  private final String words;

  UnitGround(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
