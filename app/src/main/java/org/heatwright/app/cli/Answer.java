package org.heatwright.app.cli;

import org.heatwright.app.json.Json;
import picocli.CommandLine.Option;

/** The options every command has, and how it answers. */
final class Answer {

  static final int DONE = 0;
  static final int STOP = 1;
  static final int WRONG_INPUT = 2;
  static final int FAILED = 3;

  @Option(names = "--json", description = "Answer as JSON, for programs.")
  private boolean json;

  @Option(names = "--help", usageHelp = true, description = "Show this help.")
  private boolean help;

  /** Prints the record or the page, whichever was asked for. */
  void give(Surroundings surroundings, Record record, Page page) {
    surroundings.out().print(json ? Json.text(record) : page.toString());
    surroundings.out().flush();
  }
}
