package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * Everything on the shelf, and what was put away from it.
 *
 * @param clock the time at the bench
 * @param groups by kind of thing; none is empty
 * @param away what was put away, last first
 * @param undo what was put away just now
 * @param back name of what was put back just now; empty if nothing was
 * @param moved what came of an archive that was brought
 */
public record ShelfPage(
    String clock,
    List<Group> groups,
    List<Away> away,
    Optional<Away> undo,
    String back,
    Moved moved) {

  /** Things of a kind. */
  public record Group(String head, List<Thing> things) {}

  /**
   * Something on the shelf.
   *
   * @param what kind of thing, a word for the form
   * @param address where it can be looked at; may be empty
   * @param about when it was kept, or of which kiln it is
   */
  public record Thing(String what, String id, String name, String address, String about) {}

  /** Something put away. */
  public record Away(String id, String what, String name, String when) {}
}
