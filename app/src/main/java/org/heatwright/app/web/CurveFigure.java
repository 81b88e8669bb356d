package org.heatwright.app.web;

import java.util.List;
import java.util.Optional;
import org.heatwright.app.json.Json;

/**
 * Curves as the template {@code chart.jte} lays them out: a drawing that needs no script, and the
 * data from which {@code curves.js} takes over. Places are percentages of the frame; paths are in
 * seconds and °C, downward.
 *
 * @param id of the figure, one word; its parts' ids begin with it
 * @param told under it, in words; may be empty
 * @param summary the curves in words, for those who do not see them
 * @param box what of the paths' plane is seen: left, top, width, height
 * @param legend what is drawn how
 * @param rows values to be read
 * @param json for the script
 */
public record CurveFigure(
    String id,
    String told,
    String summary,
    String box,
    String band,
    List<Line> lines,
    List<Dot> dots,
    List<Tick> times,
    List<Tick> temperatures,
    List<Stretch> stretches,
    List<Limit> limits,
    List<Part> parts,
    Optional<String> now,
    List<Key> legend,
    List<String> head,
    List<List<String>> rows,
    String json) {

  /**
   * Lays out curves.
   *
   * @param id of the figure, one word that no other figure of the page has
   * @param told under it, in words; may be empty
   * @param summary the curves in words
   */
  static CurveFigure of(String id, CurveData data, String told, String summary) {
    CurveDrawing drawing = new CurveDrawing(data);
    return new CurveFigure(
        id,
        told,
        summary,
        drawing.box(),
        drawing.band(),
        drawing.lines(),
        drawing.dots(),
        drawing.timeTicks(),
        drawing.temperatureTicks(),
        drawing.stretches(),
        drawing.limits(),
        drawing.parts(),
        drawing.now(),
        drawing.legend(),
        drawing.head(),
        drawing.rows(),
        Json.inPage(CurveJson.of(data, summary)));
  }

  /**
   * @param look class of its stroke
   * @param tag a letter where several are alike; may be empty
   */
  public record Line(String look, String path, String tag, String tagX, String tagY) {}

  /** A reading by hand. */
  public record Dot(String x, String y) {}

  /**
   * A labelled place on an axis.
   *
   * @param day the date, where one begins
   * @param spare true if a narrow screen may leave the label out
   * @param spareDay likewise the date
   */
  public record Tick(String at, String label, String day, boolean spare, boolean spareDay) {
    Tick spared() {
      return new Tick(at, label, day, true, spareDay);
    }

    Tick withSpareDay() {
      return new Tick(at, label, day, spare, true);
    }
  }

  /**
   * A stretch along the time axis.
   *
   * @param look "night", "ready" or "event"
   * @param label beside it; may be empty
   * @param moment true if it has no width
   */
  public record Stretch(String look, String from, String width, String label, boolean moment) {}

  /**
   * A temperature not to exceed.
   *
   * @param height how far down from the top its hatching reaches
   * @param why whose limit it is, a clause that a narrow screen may leave out
   */
  public record Limit(String height, String what, String why) {}

  /** A segment's number, and where the segment ends. */
  public record Part(String number, String middle, String end, boolean wide) {}

  /**
   * An entry of the legend.
   *
   * @param look class of the sample's stroke or area
   * @param kind "line", "banded", "area", "dot" or "hatch"
   */
  public record Key(String look, String kind, String tag, String label) {}
}
