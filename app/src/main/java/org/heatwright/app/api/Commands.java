package org.heatwright.app.api;

import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** The commands, for whoever asks them from elsewhere than a terminal. */
public interface Commands {

  /** The command that all others are under. */
  CommandSpec root();

  /**
   * Runs a command as in a terminal.
   *
   * @param arguments its words, then its options; no word stands for a file of more words
   */
  Ran run(List<String> arguments);

  /**
   * What came of it.
   *
   * @param exit 0 done; 1 done, with a finding that says stop; 2 the input is wrong; 3 something
   *     failed
   * @param out what it answered
   * @param complaint what was wrong, a sentence; empty where nothing was
   */
  record Ran(int exit, String out, String complaint) {}
}
