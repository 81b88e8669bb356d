package org.heatwright.app.web;

/**
 * The page shown while something is worked out.
 *
 * @param clock at the head
 * @param id of the work
 * @param what is being done
 * @param place where a person is who waits for it
 * @param step what it is at, a sentence
 * @param since how long it has been going, e.g. "12 s"
 * @param from address of the page that asked for it
 * @param stopped a person stopped it, and it has not ended yet
 */
public record WaitingPage(
    String clock,
    String id,
    String what,
    Place place,
    String step,
    String since,
    String from,
    boolean stopped) {}
