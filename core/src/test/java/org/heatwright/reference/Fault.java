package org.heatwright.reference;

/**
 * Something that goes wrong during one firing.
 *
 * @param kind what goes wrong
 * @param onsetSeconds when it begins, s from the program's start
 * @param lengthSeconds how long it lasts, s; infinite where it stays
 * @param extentShare how much of it, 0 to 1: the share of the door's edge that gapes for {@link
 *     Kind#DOOR_AJAR}, the share of 20 mm by which the tip is pulled for {@link Kind#TIP_OUT}; the
 *     others take no notice
 */
public record Fault(Kind kind, double onsetSeconds, double lengthSeconds, double extentShare) {

  /** The kinds of fault. */
  public enum Kind {
    /** One of two equal parallel elements opens: half the power from onset on. */
    ELEMENT_OPEN,
    /** The thermocouple's tip slips out by up to 20 mm. */
    TIP_OUT,
    RELAY_STUCK_ON,
    RELAY_STUCK_OFF,
    /** The door stands open by 5 mm along part of its edge. */
    DOOR_AJAR,
    MAINS_CUT
  }

  public Fault {
    if (!(onsetSeconds >= 0) || !(lengthSeconds > 0) || !(extentShare > 0 && extentShare <= 1)) {
      throw new IllegalArgumentException(
          "The fault (%s at %s s for %s s, extent %s) must begin at zero or later, last, and have an extent in 0 to 1."
              .formatted(kind, onsetSeconds, lengthSeconds, extentShare));
    }
  }

  public static Fault elementOpen(double onsetSeconds) {
    return new Fault(Kind.ELEMENT_OPEN, onsetSeconds, Double.POSITIVE_INFINITY, 1);
  }

  public static Fault tipOut(double onsetSeconds) {
    return new Fault(Kind.TIP_OUT, onsetSeconds, Double.POSITIVE_INFINITY, 1);
  }

  /** Five minutes of full power. */
  public static Fault relayStuckOn(double onsetSeconds) {
    return new Fault(Kind.RELAY_STUCK_ON, onsetSeconds, 300, 1);
  }

  /** Five minutes without power; the program's clock runs. */
  public static Fault relayStuckOff(double onsetSeconds) {
    return new Fault(Kind.RELAY_STUCK_OFF, onsetSeconds, 300, 1);
  }

  public static Fault doorAjar(double onsetSeconds, double lengthSeconds, double edgeShare) {
    return new Fault(Kind.DOOR_AJAR, onsetSeconds, lengthSeconds, edgeShare);
  }

  /** The mains are off for 2 to 25 minutes or as long as said; the program's clock stands. */
  public static Fault mainsCut(double onsetSeconds, double lengthSeconds) {
    return new Fault(Kind.MAINS_CUT, onsetSeconds, lengthSeconds, 1);
  }

  boolean acts(Kind asked, double second) {
    return kind == asked && second >= onsetSeconds && second < onsetSeconds + lengthSeconds;
  }
}
