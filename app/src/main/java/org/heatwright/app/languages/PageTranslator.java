package org.heatwright.app.languages;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.DataNode;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Node;
import org.jsoup.parser.Parser;

/**
 * Puts a finished page, or the parts of one, into another language: what is read and what is read
 * aloud. What a person wrote, marked {@code translate="no"}, stays; so do scripts and styles.
 */
public final class PageTranslator {

  private static final String POCKET = "pocket-data";
  private static final List<String> POCKET_TOPICS = List.of("pocket.txt", "keypads.txt");
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Set<String> UNTOUCHED = Set.of("script", "style", "textarea", "code", "pre");
  private static final Set<String> READ_ALOUD =
      Set.of(
          "title",
          "aria-label",
          "aria-description",
          "aria-valuetext",
          "placeholder",
          "alt",
          "data-working",
          "data-words");

  /** What a page's own script says; the same names stand for other things too, in one word. */
  private static final Set<String> FOR_SCRIPTS =
      Set.of(
          "data-idle",
          "data-now",
          "data-beyond",
          "data-after",
          "data-in",
          "data-out",
          "data-gone",
          "data-back",
          "data-again",
          "data-send-again",
          "data-waiting",
          "data-as-of",
          "data-not-sent");

  private static final Set<String> INLINE =
      Set.of("a", "strong", "em", "span", "b", "samp", "small", "tspan", "i");

  /** Fields of our JSON answers that hold texts; all else is for programs. */
  private static final Set<String> TEXTS =
      Set.of(
          "errors", "refusal", "notes", "name", "summary", "says", "label", "what", "why", "told",
          "head", "coming");

  private static final Set<String> PAGES = Set.of("parts", "answer");
  private static final Set<String> PROGRAMS = Set.of("forecast", "query", "of");
  private static final Pattern MARK = Pattern.compile("<(\\d)>(.*?)</\\1>");

  private static final String COMPOSED = "data-composed";

  /** Fields in which a number stands, to be read as a person writes it. */
  private static final Set<String> NUMBERED = Set.of(COMPOSED, "data-number");

  private static final Pattern NUMBER = Pattern.compile("[-+]?\\d+\\.\\d+");
  private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");

  private final Phrasebook book;
  private final Language language;
  private final Consumer<String> unknown;

  /**
   * @param book the language's, with the names that stay
   * @param unknown hears every text that the book does not know
   */
  public PageTranslator(Language language, Phrasebook book, Consumer<String> unknown) {
    this.language = language;
    this.book = book;
    this.unknown = unknown;
  }

  /** A whole page. */
  public String page(String html) {
    Document document = Jsoup.parse(html);
    document.outputSettings().prettyPrint(false);
    element(document);
    document.select("html").attr("lang", language.tag());
    Element pocket = document.getElementById(POCKET);
    if (pocket != null) {
      pocket.before(pocketWords());
    }
    document.select("a[hreflang]").removeAttr("aria-current");
    document.select("a[hreflang=" + language.tag() + "]").attr("aria-current", "true");
    return document.outerHtml();
  }

  /** What the script of the page to take along says: it has no bench to ask. */
  private Element pocketWords() {
    ObjectNode words = JSON.createObjectNode();
    ArrayNode phrases = JSON.createArrayNode();
    for (String topic : POCKET_TOPICS) {
      book.dictionary(topic)
          .forEach(
              (english, other) -> {
                if (english.contains("{")) {
                  phrases.addArray().add(english).add(other);
                } else {
                  words.put(english, other);
                }
              });
    }
    ObjectNode both = JSON.createObjectNode().put("lang", language.tag());
    both.set("words", words);
    both.set("phrases", phrases);
    Element script = new Element("script").attr("type", "application/json");
    script.attr("id", "pocket-words");
    script.appendChild(new DataNode(both.toString().replace("<", "\\u003c")));
    return script;
  }

  /** The inside of an element. */
  public String part(String html) {
    Document document = Jsoup.parseBodyFragment(html);
    document.outputSettings().prettyPrint(false);
    element(document.body());
    return document.body().html();
  }

  /** A drawing of its own. */
  public String drawing(String svg) {
    Document document = Jsoup.parse(svg, "", Parser.xmlParser());
    document.outputSettings().prettyPrint(false).syntax(Document.OutputSettings.Syntax.xml);
    element(document);
    return document.outerHtml();
  }

  /** One sentence or more. */
  public String sentence(String text) {
    return book.said(text, this::tell);
  }

  /** A JSON answer of the bench to its script: its texts and its parts of pages. */
  public String answer(String json) {
    try {
      JsonNode tree = JSON.readTree(json);
      return JSON.writer()
              .with(SerializationFeature.INDENT_OUTPUT)
              .writeValueAsString(node("", tree, false))
          + "\n";
    } catch (JsonProcessingException e) {
      return json;
    }
  }

  // ---- pages

  private void element(Element element) {
    if (element.attr("translate").equals("no")) {
      return;
    }
    for (String name : READ_ALOUD) {
      String words = element.attr(name);
      if (!words.isBlank()) {
        element.attr(name, sentence(words));
      }
    }
    for (String name : FOR_SCRIPTS) {
      String words = element.attr(name);
      if (words.indexOf(' ') >= 0) {
        element.attr(name, sentence(words));
      }
    }
    if (element.normalName().equals("script")
        && (element.hasClass("data") || element.id().equals("timer-data"))) {
      data(element);
      return;
    }
    boolean display = element.normalName().equals("samp") && !element.text().contains(" ");
    if (display || UNTOUCHED.contains(element.normalName())) {
      return;
    }
    if (element.normalName().equals("option") && !element.hasAttr("value")) {
      element.attr("value", element.text()); // what is sent stays what it was
    }
    if (NUMBERED.stream().anyMatch(element::hasAttr)) {
      localised(element, "value");
      localised(element, COMPOSED);
    }
    if (mixed(element) && marked(element)) {
      return;
    }
    for (Node child : List.copyOf(element.childNodes())) {
      if (child instanceof Element inner) {
        element(inner);
      } else if (child instanceof org.jsoup.nodes.TextNode words && !words.isBlank()) {
        words.text(sentence(words.getWholeText()));
      }
    }
  }

  /** A number where a person types one; anything else in a field is theirs. */
  private void localised(Element element, String attribute) {
    if (NUMBER.matcher(element.attr(attribute)).matches()) {
      element.attr(attribute, book.said(element.attr(attribute)));
    }
  }

  private void data(Element element) {
    try {
      String json = JSON.writeValueAsString(node("", JSON.readTree(element.data()), false));
      element.empty();
      element.appendChild(new DataNode(json.replace("<", "\\u003c")));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("A page of ours holds data that are no JSON.", e);
    }
  }

  /** Words with emphasised words or links among them. */
  private static boolean mixed(Element element) {
    boolean words = false;
    boolean inline = false;
    for (Node child : element.childNodes()) {
      if (child instanceof Element inner) {
        if (!INLINE.contains(inner.normalName()) || !inner.children().isEmpty()) {
          return false;
        }
        inline = true;
      } else if (child instanceof org.jsoup.nodes.TextNode text) {
        words |= !text.isBlank();
      }
    }
    return words && inline;
  }

  /** The words and what stands among them as one sentence, if the book has it. */
  private boolean marked(Element element) {
    List<Element> inner = new ArrayList<>();
    StringBuilder text = new StringBuilder();
    for (Node child : element.childNodes()) {
      if (child instanceof Element one) {
        inner.add(one);
        int number = inner.size();
        text.append('<').append(number).append('>').append(one.wholeText());
        text.append("</").append(number).append('>');
      } else if (child instanceof org.jsoup.nodes.TextNode words) {
        text.append(words.getWholeText());
      }
    }
    List<String> missed = new ArrayList<>();
    if (inner.size() > 9) {
      return false;
    }
    String said = book.said(text.toString(), missed::add);
    if (!missed.isEmpty()) {
      return false;
    }
    List<Node> nodes = new ArrayList<>();
    Matcher mark = MARK.matcher(said);
    int from = 0;
    while (mark.find()) {
      int number = Integer.parseInt(mark.group(1));
      nodes.add(new org.jsoup.nodes.TextNode(said.substring(from, mark.start())));
      Element one = inner.get(number - 1);
      one.text(mark.group(2));
      nodes.add(one);
      from = mark.end();
    }
    nodes.add(new org.jsoup.nodes.TextNode(said.substring(from)));
    element.empty();
    nodes.forEach(element::appendChild);
    return true;
  }

  // ---- data

  private JsonNode node(String field, JsonNode value, boolean text) {
    if (PROGRAMS.contains(field)) {
      return value;
    }
    if (value instanceof ObjectNode object) {
      boolean pages = PAGES.contains(field);
      boolean texts = TEXTS.contains(field);
      for (Map.Entry<String, JsonNode> entry : object.properties()) {
        String name = pages ? "answer" : entry.getKey();
        object.set(entry.getKey(), node(name, entry.getValue(), texts));
      }
      return object;
    }
    if (value instanceof ArrayNode array) {
      for (int i = 0; i < array.size(); i++) {
        array.set(i, node(field, array.get(i), text));
      }
      return array;
    }
    if (value.isTextual() && PAGES.contains(field)) {
      return TextNode.valueOf(part(value.asText()));
    }
    return value.isTextual() && (text || TEXTS.contains(field))
        ? TextNode.valueOf(sentence(value.asText()))
        : value;
  }

  private void tell(String words) {
    if (WORD.matcher(words).find()) {
      unknown.accept(words);
    }
  }
}
