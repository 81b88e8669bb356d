package org.heatwright.app.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.StringJoiner;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;
import org.heatwright.inspect.Wording;
import org.heatwright.keypad.CheckFigures;
import org.heatwright.keypad.FitNote;
import org.heatwright.keypad.FittedProgram;
import org.heatwright.keypad.KeyedValue;
import org.heatwright.keypad.Keypad;
import org.heatwright.keypad.KeypadFit;
import org.heatwright.keypad.keying.KeyingPlanner;
import org.heatwright.keypad.keying.KeyingSheet;
import org.heatwright.keypad.keying.KeyingStep;
import org.heatwright.pocket.PageScript;
import org.heatwright.pocket.Pocket;
import org.heatwright.schedule.AtEnd;
import org.heatwright.schedule.HourMinute;
import org.heatwright.schedule.Schedule;
import org.heatwright.units.Temperature;
import org.heatwright.units.TemperatureUnit;
import org.heatwright.work.Found;

/**
 * A firing to take along: card, keying sheet, rehearsal and blind read-back as one page. As a file
 * it holds everything and can load nothing; from the bench it is the same page, its script beside
 * it. Without a script the card and the sheet can still be read.
 */
public final class PocketPage {

  private static final String COLOURS = "colours.css";
  private static final String STYLE = "pocket.css";
  private static final String SCRIPT = "pocket.js";

  /** What the bench's worker says over a page that it kept, and what follows. */
  private static final String AS_OF =
      "data-as-of=\"As of {time}: the bench does not answer. Card, keys, rehearsal and read-back work without it.\""
          + " data-again=\"The bench answers again: look again.\"";

  private final Content content;
  private final StringBuilder out = new StringBuilder();

  private PocketPage(Content content) {
    this.content = content;
  }

  /**
   * What the page is about.
   *
   * @param card where and when it is fired, if that is known
   * @param program what is keyed; it must fit
   * @param keypad on what
   * @param slot into which program slot
   * @param held what the slot holds before, where that is known
   * @param sheet how
   */
  public record Content(
      Optional<Card> card,
      FittedProgram program,
      Keypad keypad,
      int slot,
      Optional<FittedProgram> held,
      KeyingSheet sheet) {

    /** With the sheet that is the quickest from what the slot holds. */
    public static Content of(
        Optional<Card> card,
        FittedProgram program,
        Keypad keypad,
        int slot,
        Optional<Schedule> held) {
      return new Content(
          card,
          program,
          keypad,
          slot,
          held.map(h -> KeypadFit.fit(h, keypad)),
          KeyingPlanner.plan(program, keypad, slot, held));
    }
  }

  /** One file that needs nothing else. */
  public static String file(Content content) {
    String style = resource(COLOURS) + resource(STYLE);
    String script = PageScript.withCore(resource(SCRIPT));
    String policy =
        "default-src 'none'; style-src '%s'; script-src '%s'; base-uri 'none'; form-action 'none'"
            .formatted(hash("\n" + style), hash("\n" + script));
    return new PocketPage(content)
        .page(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"%s\">\n<style>\n%s</style>\n"
                .formatted(policy, style),
            "<script type=\"module\">\n" + script + "</script>\n",
            Optional.empty());
  }

  /**
   * The same page from the bench, which serves its style and its scripts.
   *
   * @param back address of the plan
   */
  public static String served(Content content, String back) {
    return new PocketPage(content)
        .page(
            "<link rel=\"stylesheet\" href=\"/%s\">\n<link rel=\"stylesheet\" href=\"/%s\">\n"
                .formatted(COLOURS, STYLE),
            "<script type=\"module\" src=\"/"
                + SCRIPT
                + "\"></script>\n<script type=\"module\" src=\"/keep.js\"></script>\n",
            Optional.of(back));
  }

  private String page(String head, String script, Optional<String> back) {
    String data = Pocket.data(content.keypad(), content.program(), content.slot(), content.held());
    out.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<meta name=\"referrer\" content=\"no-referrer\">\n")
        .append(
            back.isPresent()
                ? "<link rel=\"icon\" href=\"/icon.svg\">\n<link rel=\"manifest\" href=\"/manifest.webmanifest\">\n"
                : "<link rel=\"icon\" href=\"data:,\">\n");
    element("title", "", job() + " on " + content.keypad().name());
    out.append(head)
        .append("</head>\n")
        .append(back.isPresent() ? "<body " + AS_OF + ">" : "<body>")
        .append("\n<a class=\"skip\" href=\"#main\">To the page</a>\n");
    out.append("<header class=\"top\">");
    element("h1", "", job());
    element(
        "p",
        "",
        content.card().map(c -> c.header().kiln() + ", keypad ").orElse("Keypad ")
            + content.keypad().name());
    out.append("</header>\n<nav class=\"tabs\" aria-label=\"Parts\"><ul>")
        .append("<li><a href=\"#card\">Card</a></li><li><a href=\"#keyin\">Key it in</a></li>")
        .append("<li><a href=\"#rehearse\">Rehearse</a></li>")
        .append("<li><a href=\"#readback\">Read back</a></li></ul></nav>\n<main id=\"main\">\n");
    card();
    keyIn();
    rehearse();
    readBack();
    out.append("</main>\n<footer>");
    back.ifPresent(
        address ->
            out.append("<p><a href=\"")
                .append(escaped(address))
                .append("\">Back to the plan</a></p>"));
    element("p", "", Card.NEVER_STARTS_HEAT + " " + Card.MAKERS_FIRST);
    if (back.isEmpty()) {
      element(
          "p",
          "",
          "This page is one file. It needs no network and sends nothing; what is typed stays here.");
    }
    out.append("</footer>\n");
    data("pocket-data", data);
    data("pocket-facts", "{\"id\":\"" + HexFormat.of().formatHex(digest(data), 0, 6) + "\"}");
    return out.append(script).append("</body>\n</html>\n").toString();
  }

  private void data(String id, String json) {
    out.append("<script type=\"application/json\" id=\"%s\">%s</script>\n".formatted(id, json));
  }

  private String job() {
    return content.program().requested().name();
  }

  // ---------------------------------------------------------------- card

  private void card() {
    screen("card", "Firing card");
    content
        .card()
        .ifPresentOrElse(
            this::firing,
            () -> {
              out.append("<dl class=\"facts\">");
              keyed();
              out.append("</dl>\n");
              list("told", content.program().notes().stream().map(FitNote::message).toList());
              segments(Optional.empty());
            });
    out.append("</section>\n");
  }

  private void firing(Card card) {
    WhenWords when = new WhenWords(card.timing().start());
    card.timing().ready().ifPresent(ready -> ready(ready, when));
    card.findings().stream().filter(f -> f.severity() != Severity.NOTE).forEach(this::finding);
    out.append("<dl class=\"facts\">");
    fact(
        "program starts",
        card.timing()
            .start()
            .map(s -> when.full(0) + (card.timing().delayed() ? ", after the delay" : ""))
            .orElse("when start is pressed; times below count from then"));
    fact(
        card.timing().atEnd() == AtEnd.OFF ? "ends, elements off" : "last hold ends, heat stays on",
        ending(card.timing().ending(), when));
    fact("kiln", card.header().kiln());
    keyed();
    fact("responsible", card.header().responsible().orElse("not told"));
    fact("phone", card.header().phone().orElse("not told"));
    card.limits().forEach(f -> fact(f.label(), f.value()));
    out.append("</dl>\n");
    list("told", card.timing().notes());
    segments(Optional.of(card));
    displayTimes(card, when);
    out.append("<h3>If something is wrong</h3>\n<ul class=\"told\">");
    for (Card.Alarm alarm : card.alarms()) {
      out.append("<li><strong>")
          .append(escaped(alarm.sign()))
          .append(":</strong> ")
          .append(escaped(alarm.action()))
          .append("</li>");
    }
    out.append("</ul>\n<h3>Before the door shuts</h3>\n");
    list("ticks", card.loading());
    if (!card.cautions().isEmpty()) {
      out.append("<h3>Cautions</h3>\n");
      list("told", card.cautions());
    }
    if (!card.moments().isEmpty()) {
      out.append("<h3>What a person does, and when</h3>\n");
      list("told", card.moments().stream().map(m -> m.at(when) + ": " + m.what()).toList());
    }
    out.append("<h3>When it is opened</h3>\n");
    list("ticks", card.found().stream().map(Found::words).toList());
    List<Finding> notes =
        card.findings().stream().filter(f -> f.severity() == Severity.NOTE).toList();
    if (!notes.isEmpty()) {
      out.append("<h3>To know</h3>\n");
      list("told", notes.stream().map(Finding::message).toList());
    }
    facts("The pour", card.pour());
    facts("Work", card.work());
    list("told", card.estimates());
    facts("Power", card.power());
    element("p", "aside", card.scheduleText());
  }

  private static String ending(Ending ending, WhenWords when) {
    return ending.isTold()
        ? "%s (%s, nine in ten)"
            .formatted(when.full(ending.seconds().median()), when.band(ending.seconds()))
        : "%s, %s".formatted(ending.briefly(), ending.cases());
  }

  private void ready(Card.Ready ready, WhenWords when) {
    double from = ready.fromSeconds().median();
    out.append("<p class=\"big\"><span class=\"lead\">")
        .append(escaped(ready.what()))
        .append(" from about</span> <span class=\"figure\">")
        .append(escaped(when.clock(from)))
        .append("</span> <span class=\"day\">")
        .append(escaped(when.day(from).isEmpty() ? "after the program's start" : when.day(from)))
        .append(escaped(" (" + when.band(ready.fromSeconds()) + ", nine in ten)"));
    ready
        .untilSeconds()
        .ifPresent(until -> out.append(escaped(", until " + when.full(when.minuteBefore(until)))));
    out.append("</span></p>\n");
  }

  private void finding(Finding finding) {
    String severity = finding.severity().name().toLowerCase(Locale.ROOT);
    out.append("<p class=\"finding ")
        .append(severity)
        .append("\"><strong>")
        .append(severity)
        .append("</strong> ")
        .append(escaped(finding.message()))
        .append("</p>\n");
  }

  private void keyed() {
    fact("keypad", content.keypad().name());
    fact("program slot", Integer.toString(content.slot()));
    fact("unit in force", content.program().unit().symbol());
  }

  /** All values in keying order, a segment an item, with its purpose and time where known. */
  private void segments(Optional<Card> card) {
    out.append("<h3>Values to key, in this order</h3>\n<ol class=\"segments\">");
    List<KeyedValue> values = content.program().values();
    int from = 0;
    while (from < values.size()) {
      KeyedValue first = values.get(from);
      int to = from + 1;
      while (to < values.size() && together(first, values.get(to))) {
        to++;
      }
      boolean unused = first.kind() == KeyedValue.Kind.END && first.segment() > 0;
      List<KeyedValue> group = values.subList(from, to);
      out.append("<li>");
      if (first.segment() == 0 || unused) {
        String place =
            unused && group.size() > 1
                ? "segments %d to %d"
                    .formatted(first.segment(), group.get(group.size() - 1).segment())
                : first.place();
        element("p", "", place);
        digits(List.of(first), false);
        element("p", "meaning", first.meaning());
      } else {
        Optional<Card.Entry> entry = card.map(c -> c.entries().get(first.segment() - 1));
        element(
            "p", "", "segment " + first.segment() + entry.map(e -> ": " + e.purpose()).orElse(""));
        digits(group, true);
        StringJoiner meanings = new StringJoiner(", ");
        group.forEach(v -> meanings.add(v.meaning()));
        element("p", "meaning", entry.map(Card.Entry::meaning).orElse(meanings.toString()));
        card.ifPresent(
            c ->
                element(
                    "p",
                    "meaning",
                    entry
                        .flatMap(Card.Entry::reachedSeconds)
                        .map(
                            reached ->
                                "hold starts about "
                                    + new WhenWords(c.timing().start()).full(reached.median()))
                        .orElse("the kiln may never get there")));
      }
      out.append("</li>");
      from = to;
    }
    out.append("</ol>\n<h3>Check figures</h3>\n<dl class=\"facts\">");
    CheckFigures figures = content.program().checkFigures();
    fact("segments", Integer.toString(figures.segments()));
    fact(
        "targets add up to",
        plain(figures.sumOfTargets()) + " " + content.program().unit().symbol());
    fact("holds add up to", figures.totalMinutes() + " min");
    fact("first unused", figures.firstUnused());
    out.append("</dl>\n");
  }

  private static boolean together(KeyedValue first, KeyedValue other) {
    boolean end = first.kind() == KeyedValue.Kind.END;
    return first.segment() > 0
        && (end
            ? other.kind() == KeyedValue.Kind.END && other.segment() > 0
            : other.segment() == first.segment() && other.kind() != KeyedValue.Kind.END);
  }

  private void digits(List<KeyedValue> values, boolean labelled) {
    out.append("<p class=\"digits\">");
    for (KeyedValue value : values) {
      out.append("<span>");
      if (labelled) {
        out.append("<small translate=\"no\">")
            .append(escaped(content.keypad().label(value.segment(), value.kind())))
            .append("</small>");
      }
      out.append("<b translate=\"no\">").append(escaped(value.digits())).append("</b></span> ");
    }
    out.append("</p>");
  }

  private void displayTimes(Card card, WhenWords when) {
    if (card.display().isEmpty()) {
      return;
    }
    TemperatureUnit unit = card.header().unit();
    out.append(
        "<h3>What the display should read</h3>\n<table><thead><tr><th scope=\"col\">at</th><th scope=\"col\">nine in ten, ");
    out.append(escaped(unit.symbol())).append("</th></tr></thead><tbody>");
    for (Card.DisplayRow row : card.display()) {
      out.append("<tr><td>")
          .append(escaped(when.full(row.seconds())))
          .append("</td><td>")
          .append(degrees(row.displayCelsius().low(), unit))
          .append(" to ")
          .append(degrees(row.displayCelsius().high(), unit))
          .append("</td></tr>");
    }
    out.append("</tbody></table>\n");
  }

  private static String degrees(double celsius, TemperatureUnit unit) {
    return Long.toString(Math.round(unit.value(new Temperature(celsius))));
  }

  // ---------------------------------------------------------------- the other screens

  private void keyIn() {
    screen("keyin", "Key it in");
    element(
        "p",
        "",
        "Slot %d of %s, in %s: %d steps, about %s by hand."
            .formatted(
                content.slot(),
                content.keypad().name(),
                content.program().unit().symbol(),
                content.sheet().steps().size(),
                HourMinute.words(content.sheet().byHand())));
    out.append("<ol class=\"keys\">");
    for (KeyingStep step : content.sheet().steps()) {
      out.append("<li>");
      element("p", "prompt", Wording.capital(step.prompt()));
      shows("before: ", step.showsBefore(), "");
      element("p", "press", Wording.capital(step.press()));
      shows("it must show ", step.showsAfter(), step.meaning());
      out.append("</li>");
    }
    out.append("</ol>\n");
    element("p", "aside", "Times by hand: " + content.sheet().timesOrigin());
    out.append("</section>\n");
  }

  private void shows(String lead, String display, String meaning) {
    if (display.isEmpty() && meaning.isEmpty()) {
      return;
    }
    out.append("<p class=\"shows\">");
    if (!display.isEmpty()) {
      out.append(lead).append("<samp>").append(escaped(display)).append("</samp>");
    }
    if (!meaning.isEmpty()) {
      out.append(" ").append(escaped(display.isEmpty() ? meaning : "(" + meaning + ")"));
    }
    out.append("</p>");
  }

  private void rehearse() {
    screen("rehearse", "Rehearse it here first");
    element(
        "p",
        "",
        "Key the program on this drawn keypad. It behaves as %s is described; nothing here reaches a kiln."
            .formatted(content.keypad().name()));
    needsScript();
  }

  private void readBack() {
    screen("readback", "Read it back, blind");
    element(
        "p",
        "",
        "Leave programming on %s, open the review of the slot (%s), and type what the display shows, value by value. Leave empty what it does not show."
            .formatted(content.keypad().name(), content.keypad().gestures().review().words()));
    element(
        "p",
        "aside",
        "The plan is hidden until you compare. Look at card or sheet before that, and what you typed is put away: only a blind check proves anything.");
    needsScript();
  }

  private void needsScript() {
    element(
        "p",
        "unscripted error",
        "This needs a browser that runs scripts. Some viewers of mails and files do not: open the file with the browser of the phone.");
    out.append("<div class=\"work\"></div>\n</section>\n");
  }

  // ---------------------------------------------------------------- writing

  private void screen(String id, String head) {
    out.append(
        "<section class=\"screen\" id=\"%s\" aria-labelledby=\"%s-head\">\n".formatted(id, id));
    out.append("<h2 id=\"%s-head\" tabindex=\"-1\">%s</h2>\n".formatted(id, escaped(head)));
  }

  private void facts(String head, List<Card.Fact> facts) {
    if (facts.isEmpty()) {
      return;
    }
    element("h3", "", head);
    out.append("<dl class=\"facts\">");
    facts.forEach(f -> fact(f.label(), f.value()));
    out.append("</dl>\n");
  }

  private void fact(String label, String text) {
    out.append("<div>");
    element("dt", "", label);
    if (text.indexOf(' ') < 0) {
      out.append("<dd translate=\"no\">").append(escaped(text)).append("</dd>");
    } else {
      element("dd", "", text);
    }
    out.append("</div>");
  }

  private void list(String style, List<String> items) {
    if (items.isEmpty()) {
      return;
    }
    out.append("<ul class=\"").append(style).append("\">");
    items.forEach(item -> element("li", "", item));
    out.append("</ul>\n");
  }

  private void element(String tag, String style, String words) {
    out.append('<').append(tag);
    if (!style.isEmpty()) {
      out.append(" class=\"").append(style).append('"');
    }
    out.append('>').append(escaped(words)).append("</").append(tag).append('>');
  }

  private static String escaped(String words) {
    return words
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  private static String plain(double value) {
    return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
  }

  private static String hash(String text) {
    return "sha256-" + Base64.getEncoder().encodeToString(digest(text));
  }

  private static byte[] digest(String text) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("Every Java has SHA-256.", e);
    }
  }

  private static String resource(String name) {
    try (InputStream in = PocketPage.class.getResourceAsStream("/public/" + name)) {
      if (in == null) {
        throw new IllegalStateException("The build left out " + name + "; build it again.");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
