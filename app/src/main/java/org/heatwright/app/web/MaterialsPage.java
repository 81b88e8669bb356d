package org.heatwright.app.web;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Every value with its source.
 *
 * @param clock the time at the bench
 * @param words what was looked for; may be empty
 * @param unit "C" or "F"
 * @param found what was found, a sentence
 * @param own a person's own values
 * @param told what was done with them just now
 * @param shelves of materials
 */
public record MaterialsPage(
    String clock,
    String words,
    String unit,
    String found,
    List<Own> own,
    Told told,
    List<Kind> shelves) {

  /**
   * A person's own values of one material.
   *
   * @param id of the text on the shelf
   * @param of what they are of, in words
   * @param source where the person has them from
   * @param address of the form that changes them
   * @param same works that hold them as they are
   * @param other works that hold them with other values
   * @param fitting works that take them
   */
  public record Own(
      String id,
      String name,
      String of,
      String source,
      String address,
      List<Value> values,
      List<Where> same,
      List<Where> other,
      List<String> fitting) {
    public Own {
      values = List.copyOf(values);
      same = List.copyOf(same);
      other = List.copyOf(other);
      fitting = List.copyOf(fitting);
    }
  }

  /** A work, and its plan. */
  public record Where(String name, String address) {
    static Where of(String work) {
      return work.isEmpty()
          ? new Where("", "")
          : new Where(work, "/plan?work=" + URLEncoder.encode(work, StandardCharsets.UTF_8));
    }
  }

  /**
   * What was done just now; its parts may be empty.
   *
   * @param kept values that were kept
   * @param put values that were put into a work
   * @param work that work
   * @param back a work that was given its earlier text back
   * @param error why a work did not take values
   */
  public record Told(String kept, String put, Where work, Where back, String error) {
    static Told nothing() {
      return new Told("", "", Where.of(""), Where.of(""), "");
    }
  }

  /**
   * Materials of one kind.
   *
   * @param open whether its materials lie open
   */
  public record Kind(String code, String name, String about, boolean open, List<Item> items) {}

  /** One material. */
  public record Item(String name, List<Value> values) {}

  /** A value and where it is from. */
  public record Value(String what, String value, String source) {}
}
