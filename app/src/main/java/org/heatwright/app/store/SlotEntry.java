package org.heatwright.app.store;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One line of what was told of a keypad's slots, as texts.
 *
 * @param slot its number; 0 is the whole keypad
 * @param kind what happened, one word
 * @param role who told it
 * @param program schedule file; empty where none belongs to it
 * @param keypad keypad file as it was then; empty where none belongs to it
 * @param shown shown file of a read-back; otherwise empty
 * @param unitCheck verdict, line break, reason; empty if none was made
 * @param note what a program is needed for; what was not shown, a sentence a line; otherwise empty
 * @param untilDay the last day of a need
 * @param goodForDays of a rule
 * @param keepsPrograms of a rule
 * @param told when, to the millisecond
 */
public record SlotEntry(
    int slot,
    String kind,
    String role,
    String program,
    String keypad,
    String shown,
    String unitCheck,
    String note,
    Optional<LocalDate> untilDay,
    OptionalInt goodForDays,
    Optional<Boolean> keepsPrograms,
    Instant told) {}
