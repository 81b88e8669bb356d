package org.heatwright.learn;

/**
 * Is told how far learning has come, and may end it. It is called from the thread that learns, a
 * few times a second; what it throws ends the learning and reaches who asked for it.
 */
@FunctionalInterface
public interface Progress {

  /** Nobody listens. */
  Progress UNHEARD = (step, firing) -> {};

  /** What is being done. */
  enum Step {
    /** The kiln is fitted to all firings. */
    FIT,
    /** One firing is searched for what went wrong in it. */
    SEARCH
  }

  /**
   * @param step that begins, or goes on
   * @param firing its name where the step is about one; else empty
   */
  void at(Step step, String firing);
}
