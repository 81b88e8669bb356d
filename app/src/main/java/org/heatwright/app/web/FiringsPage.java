package org.heatwright.app.web;

import java.util.List;

/**
 * The book of records.
 *
 * @param clock the time at the bench
 * @param headline what is in it, a sentence
 * @param kilns to show the firings of one alone
 * @param months firings by month, newest first
 */
public record FiringsPage(String clock, String headline, List<Tab> kilns, List<Month> months) {

  /** A kiln to choose. */
  public record Tab(String name, String address, boolean here) {}

  /** The firings of one month. */
  public record Month(String name, List<Entry> entries) {}

  /**
   * A firing of the book, or a log that was brought of one.
   *
   * @param mark "planned", "running", "good", "fault", "open" or "log"
   * @param result how it came out, or where it stands
   */
  public record Entry(
      String address, String day, String job, String kiln, String mark, String result) {}
}
