/**
 * The command line: {@code heatwright COMMAND}. It reads files, calls the core, and prints an
 * answer for people (plain text, 80 columns, no colours) or, with {@code --json}, for programs.
 *
 * <p><b>Units:</b> as in the files. <b>Threads:</b> one run, one thread. <b>Depends on:</b> {@code
 * core}, {@code files}, {@code json}, {@code report}, {@code web}, picocli. <b>Errors:</b> one
 * sentence on the error stream, never a stack trace. Exit codes: 0 done; 1 done, with a finding of
 * severity stop; 2 the input is wrong; 3 the device or store failed. Nothing outside this package
 * prints.
 */
@NullMarked
package org.heatwright.app.cli;

import org.jspecify.annotations.NullMarked;
