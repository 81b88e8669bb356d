package org.heatwright.inspect;

import java.util.List;

/** Looks a schedule over before the heat: what would happen, and what to do about it. */
public final class Inspector {

  private Inspector() {}

  /**
   * All findings, the gravest first, then by segment. Never throws for what a person typed.
   *
   * @param inspection the schedule and what is known about where it runs
   */
  public static List<Finding> inspect(Inspection inspection) {
    return List.of();
  }
}
