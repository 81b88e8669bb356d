package org.heatwright.keypad.register;

import java.util.Locale;
import java.util.Optional;

/** Who did something at the keypad: a role from a closed list, so that no name is ever kept. */
public enum Role {
  /** Whoever makes the work and fires it. */
  MAKER,
  TEACHER,
  STUDENT,
  /** Whoever looks after the kiln. */
  TECHNICIAN,
  OTHER;

  /** The lower-case word for people, files and the command line. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Optional<Role> ofWord(String word) {
    for (Role role : values()) {
      if (role.word().equals(word.strip().toLowerCase(Locale.ROOT))) {
        return Optional.of(role);
      }
    }
    return Optional.empty();
  }
}
