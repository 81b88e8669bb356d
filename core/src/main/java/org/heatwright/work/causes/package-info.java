/**
 * From how a firing came out to what may be behind it: fault classes by process with their causes,
 * the evidence for and against each, a test that a person can do, and the one change it suggests.
 *
 * <p><b>Units:</b> SI inside, said in the names; weights are natural logarithms of odds.
 * <b>Threads: </b> immutable. <b>Depends on:</b> {@code work}, {@code inspect}, {@code forecast},
 * {@code learn}, {@code schedule}. <b>Errors:</b> an unknown kind or code is empty, never guessed.
 * <b>Sources:</b> at each cause, told together in {@code docs/models/causes.md}.
 */
@NullMarked
package org.heatwright.work.causes;

import org.jspecify.annotations.NullMarked;
