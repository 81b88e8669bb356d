package org.heatwright.app.logs;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What has to be decided about a file before its rows can be read. */
public enum Topic {
  ENCODING("encoding", "how letters are stored", "utf-8", "utf-16le", "utf-16be", "latin-1"),
  SEPARATOR("separator", "what stands between two values", Table.SEPARATORS),
  FIRST_ROW("first-row", "the line of the first row"),
  HEADER("header", "the line that names the columns, or none"),
  DECIMAL("decimal", "the decimal sign", "point", "comma"),
  TIME("time", "the column of the time"),
  DATE("date", "the column of the date, or none"),
  TIME_FORM("time-form", "how time is told", TimeForm.WORDS),
  DATE_ORDER("date-order", "how a date is told", DateOrder.WORDS),
  CHAMBER("chamber", "the column of the chamber's reading"),
  UNIT("unit", "the unit of temperatures", "celsius", "fahrenheit", "kelvin"),
  SETPOINT("setpoint", "the column of the setpoint, or none"),
  WORK("work", "the column of a reading in the work, or none"),
  POWER("power", "the column of power or duty, or none"),
  POWER_UNIT("power-unit", "the unit of power; percent is a duty", "w", "kw", "percent"),
  FULL_POWER("full-power-w", "the kiln's full power, W, that a duty is a share of"),
  EVENT("event", "the column of what happened, or none");

  /** For no column. */
  public static final String NONE = "none";

  private final String word;
  private final String words;
  private final List<String> choices;

  Topic(String word, String words, String... choices) {
    this.word = word;
    this.words = words;
    this.choices = List.of(choices);
  }

  /** As it is told on the command line and kept. */
  public String word() {
    return word;
  }

  /** What is decided, for people. */
  public String words() {
    return words;
  }

  /** All that can be told; empty where it is a line, a number, or a column by number or name. */
  public List<String> choices() {
    return choices;
  }

  static Optional<Topic> of(String word) {
    return Arrays.stream(values()).filter(topic -> topic.word.equals(word)).findFirst();
  }
}
