package org.heatwright.inspect;

/** How much a finding matters. */
public enum Severity {
  /** Do not fire this. */
  STOP,
  /** Fire it only if you know why. */
  WARN,
  /** Good to know. */
  NOTE
}
