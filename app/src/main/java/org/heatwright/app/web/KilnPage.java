package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;

/**
 * What is known of one kiln, already in words: the template only lays it out.
 *
 * @param clock the bench's time when the page was made, in words
 * @param kiln its name on the shelf
 * @param address of this page
 * @param key its name as part of an address
 * @param figure from what it is known, in large
 * @param day since when, empty for a nameplate
 * @param facts what now, how sure
 * @param error why the last asking was not done, one sentence; empty where nothing is wrong
 * @param learned what its logs have taught, once they have
 * @param health how it has changed over its firings, where there are two dates or more
 * @param watched one log against its forecast, where there is a log
 * @param reading name of the log that is being read for that; may be empty
 * @param logs all of them, oldest first
 * @param schedules to choose from when a log is brought
 * @param bringing the log that a person is bringing
 */
public record KilnPage(
    String clock,
    String kiln,
    String address,
    String key,
    String figure,
    String day,
    List<Page.Fact> facts,
    String error,
    Optional<Learned> learned,
    Optional<Health> health,
    Optional<Watched> watched,
    String reading,
    List<Log> logs,
    List<Choice> schedules,
    Bringing bringing) {

  /**
   * A plot in the page.
   *
   * @param wide its SVG for wide screens
   * @param narrow its SVG for a phone
   * @param told under it, in words
   * @param svg address of the file; likewise {@code png}
   */
  public record Plot(String wide, String narrow, String told, String svg, String png) {}

  /**
   * What the logs have taught.
   *
   * @param news what is not as the nameplate lets one expect, a sentence each
   * @param rest one sentence each on what is as usual and on what was not told
   * @param later whether more of it is being worked out
   */
  public record Learned(Plot plot, List<String> news, List<String> rest, boolean later) {}

  /**
   * How it has changed over its firings.
   *
   * @param told a sentence each on elements, loss and thermocouple; what to look at goes first
   * @param notes what the firings cannot tell, a sentence each
   * @param plot none while it is still being worked out
   * @param later whether it is being worked out
   */
  public record Health(List<Told> told, List<String> notes, Optional<Plot> plot, boolean later) {

    /**
     * @param heavy whether it should be looked at
     */
    public record Told(boolean heavy, String sentence) {}
  }

  /**
   * One log against its forecast, and what is left between them where they overlap.
   *
   * @param happened what went wrong in the firing and was kept out of what is learned
   * @param notShown what the display could not have shown
   * @param remarks what is odd in the log itself: gaps, a clock that goes back, few readings
   * @param opened openings of the door that the log tells or shows, in a sentence; empty: none
   * @param firing the curves
   * @param svg address of the plot as a file, for a page without script; likewise {@code png}
   */
  public record Watched(
      String name,
      List<String> happened,
      List<String> notShown,
      List<String> remarks,
      String opened,
      CurveFigure firing,
      String svg,
      String png,
      String pieces,
      Optional<Plot> missed) {}

  /**
   * One log in the list.
   *
   * @param id of its tick
   * @param day e.g. "5 September 2026"
   * @param state what it has had in what was learned, in a few words
   * @param ticked whether the next lesson should use it
   * @param address of the page with this log against its forecast
   * @param shown whether that is this page
   */
  public record Log(
      String id,
      String name,
      String day,
      String state,
      boolean ticked,
      String address,
      boolean shown) {}

  /** An entry of a list to choose from. */
  public record Choice(String value, String words, boolean chosen) {}

  /**
   * A log that a person is bringing.
   *
   * @param csv the log as typed; likewise the rest
   * @param chosen which schedule; empty for the typed one
   * @param firing what was so that day
   * @param error why it is not there, one sentence; empty where nothing is wrong
   * @param recognised how a log of another logger was read, to be agreed to
   */
  public record Bringing(
      String name,
      String date,
      String csv,
      String chosen,
      String schedule,
      String firing,
      String error,
      Optional<Recognised> recognised) {
    static Bringing nothing() {
      return new Bringing("", "", "", "", "", "", "", Optional.empty());
    }

    Bringing wrong(String sentence) {
      return new Bringing(name, date, csv, chosen, schedule, firing, sentence, recognised);
    }

    Bringing on(String newDate) {
      return new Bringing(name, newDate, csv, chosen, schedule, firing, error, recognised);
    }

    Bringing read(Recognised how) {
      return new Bringing(name, date, csv, chosen, schedule, firing, error, Optional.of(how));
    }

    /** True if somebody should see it without asking. */
    public boolean open() {
      return !error.isEmpty() || recognised.isPresent();
    }
  }

  /**
   * How a log of another logger was read.
   *
   * @param said what was corrected so far, a line each
   * @param told what came of it, a sentence
   * @param remarks what is odd in it, a sentence each
   * @param decisions what was decided
   * @param head of each column
   * @param rows the first ones, beside what was made of them
   */
  public record Recognised(
      String said,
      String told,
      List<String> remarks,
      List<Decided> decisions,
      List<String> head,
      List<ReadRow> rows) {

    /** What a person should look at. */
    public List<Decided> open() {
      return decisions.stream().filter(d -> !d.isSure()).toList();
    }

    /** What the file says, or nothing else fits. */
    public List<Decided> sure() {
      return decisions.stream().filter(Decided::isSure).toList();
    }
  }

  /**
   * One decision about a log.
   *
   * @param name of the field that corrects it
   * @param was name of the field that holds what was decided
   * @param label what is decided
   * @param word what was decided
   * @param options to choose from; empty where it is typed
   * @param sure "told", "sure", "likely" or "guess"
   * @param why in a sentence
   */
  public record Decided(
      String name,
      String was,
      String label,
      String word,
      List<Choice> options,
      String sure,
      String why) {

    private boolean isSure() {
      return sure.equals("sure");
    }
  }

  /** A row of a log as written, and as read. */
  public record ReadRow(int line, List<String> fields, String read) {}
}
