package org.heatwright.app.web;

import io.javalin.http.BadRequestResponse;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.zip.CRC32;

/**
 * What a person chose and typed, as typed: the fields of the form, which are also the address of
 * the page. Empty text means not chosen.
 *
 * @param work name on the shelf; likewise kiln, keypad
 * @param slot program slot of the keypad
 * @param by "ready" or "start": what {@code at} means
 * @param at local date and time, {@code yyyy-MM-ddTHH:mm}
 * @param press when a person presses start, likewise
 * @param of the composition that the edits belong to; edits of another one are put aside
 * @param edits field name ("rate2") to what was typed
 */
record Choices(
    String work,
    String kiln,
    String keypad,
    String slot,
    String by,
    String at,
    String press,
    String of,
    Map<String, String> edits) {

  private static final String SEAL = "&seal=";
  private static final String INCOMPLETE =
      "The address of this plan is incomplete: a part of it was lost. Open the plan, and this page from there.";

  private static final Pattern EDIT = Pattern.compile("(rate|target|hold)[1-9]\\d?");
  private static final int LONGEST_FIELD = 200;

  Choices {
    edits = Map.copyOf(edits);
  }

  /** From fields, or from a query that {@link #sealed} holds. */
  static Choices of(Map<String, String> told) {
    Map<String, String> fields = told.containsKey("plan") ? unsealed(told.get("plan")) : told;
    Map<String, String> edits = new LinkedHashMap<>();
    fields.forEach(
        (name, value) -> {
          if (EDIT.matcher(name).matches()) {
            edits.put(name, shortened(value));
          }
        });
    return new Choices(
        text(fields, "work"),
        text(fields, "kiln"),
        text(fields, "keypad"),
        text(fields, "slot"),
        text(fields, "by"),
        text(fields, "at"),
        text(fields, "press"),
        text(fields, "of"),
        edits);
  }

  boolean readyBy() {
    return !by.equals("start");
  }

  Choices withWork(String newWork) {
    return new Choices(newWork, kiln, keypad, slot, by, at, press, of, edits);
  }

  Choices withKiln(String newKiln) {
    return new Choices(work, newKiln, keypad, slot, by, at, press, of, edits);
  }

  Choices withKeypad(String newKeypad) {
    return new Choices(work, kiln, newKeypad, slot, by, at, press, of, edits);
  }

  Choices withSlot(String newSlot) {
    return new Choices(work, kiln, keypad, newSlot, by, at, press, of, edits);
  }

  Choices withAt(String newAt) {
    return new Choices(work, kiln, keypad, slot, by, newAt, press, of, edits);
  }

  Choices withPress(String newPress) {
    return new Choices(work, kiln, keypad, slot, by, at, newPress, of, edits);
  }

  Choices withEdits(String newOf, Map<String, String> newEdits) {
    return new Choices(work, kiln, keypad, slot, by, at, press, newOf, newEdits);
  }

  /** These choices as a query string, the same for the same choices. */
  String query() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("work", work);
    fields.put("kiln", kiln);
    fields.put("keypad", keypad);
    fields.put("slot", slot);
    fields.put("by", readyBy() ? "ready" : "start");
    fields.put("at", at);
    fields.put("press", press);
    if (!edits.isEmpty()) {
      fields.put("of", of);
      edits.entrySet().stream()
          .sorted(Map.Entry.comparingByKey())
          .forEach(e -> fields.put(e.getKey(), e.getValue()));
    }
    return fields.entrySet().stream()
        .filter(e -> !e.getValue().isEmpty())
        .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&"));
  }

  /**
   * The query in one word that shows nobody the values: the read-back is blind. Its end says
   * whether all of it is there.
   */
  String sealed() {
    return sealed(query());
  }

  /** A query in one word. */
  static String sealed(String query) {
    return Base64.getUrlEncoder()
        .withoutPadding()
        .encodeToString((query + SEAL + sum(query)).getBytes(StandardCharsets.UTF_8));
  }

  private static String sum(String query) {
    CRC32 sum = new CRC32();
    sum.update(query.getBytes(StandardCharsets.UTF_8));
    return "%08x".formatted(sum.getValue());
  }

  private static Map<String, String> unsealed(String word) {
    Map<String, String> fields = new LinkedHashMap<>();
    try {
      String whole = new String(Base64.getUrlDecoder().decode(word), StandardCharsets.UTF_8);
      int seal = whole.lastIndexOf(SEAL);
      String query = whole.substring(0, Math.max(0, seal));
      if (seal < 0 || !whole.substring(seal + SEAL.length()).equals(sum(query))) {
        throw new BadRequestResponse(INCOMPLETE);
      }
      for (String pair : query.split("&", -1)) {
        int equals = pair.indexOf('=');
        if (equals > 0) {
          fields.put(
              pair.substring(0, equals),
              URLDecoder.decode(pair.substring(equals + 1), StandardCharsets.UTF_8));
        }
      }
    } catch (IllegalArgumentException notSealedByUs) {
      throw new BadRequestResponse(INCOMPLETE);
    }
    return fields;
  }

  private static String text(Map<String, String> fields, String name) {
    return shortened(fields.getOrDefault(name, ""));
  }

  private static String shortened(String value) {
    String stripped = value.strip();
    return stripped.length() > LONGEST_FIELD ? stripped.substring(0, LONGEST_FIELD) : stripped;
  }
}
