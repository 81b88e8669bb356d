package org.heatwright.app.files;

import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/**
 * The door every YAML file comes in by: YAML 1.2, one document, a mapping at the top, no aliases,
 * no deep nesting. What comes out knows its line and its path, so that every error can name them.
 */
public final class YamlFile {

  private static final int MAX_DEPTH = 20;

  private static final LoadSettings SETTINGS =
      LoadSettings.builder()
          .setSchema(new CoreSchema())
          .setAllowNonScalarKeys(true) // refused by YamlMap, which knows the line
          .setCodePointLimit(TextFile.MAX_YAML_BYTES)
          .build();

  private YamlFile() {}

  /**
   * @param text the file's text
   * @param fileName the name errors use
   * @param kind what it should be
   * @return the mapping at the top
   * @throws InputException if the text is not such a file
   */
  public static YamlMap read(String text, String fileName, FileKind kind) {
    if (text.length() > TextFile.MAX_YAML_BYTES) {
      throw InputException.in(
          fileName,
          "the file has %d characters; expected at most %d, so this is probably the wrong file."
              .formatted(text.length(), TextFile.MAX_YAML_BYTES));
    }
    try {
      requirePlainStructure(text, fileName);
      Optional<Node> root = new Compose(SETTINGS).composeString(text);
      if (root.isEmpty()) {
        throw InputException.in(
            fileName, "the file is empty; expected keys and values, such as name: Anchor.");
      }
      return kind.require(new YamlValue(kind, fileName, "", root.get()).map());
    } catch (MarkedYamlEngineException e) {
      throw notYaml(fileName, text, e);
    } catch (ReaderException e) {
      throw InputException.at(
          fileName,
          lineOf(text, e.getPosition()),
          "the character U+%04X is not allowed in YAML; remove it.".formatted(e.getCodePoint()));
    } catch (YamlEngineException e) {
      throw InputException.in(fileName, "this is not YAML (%s).".formatted(e.getMessage()));
    }
  }

  /** Events come one by one, so neither depth nor aliases can hurt here. */
  private static void requirePlainStructure(String text, String fileName) {
    int depth = 0;
    for (Event event : new Parse(SETTINGS).parseString(text)) {
      switch (event.getEventId()) {
        case Alias ->
            throw InputException.at(
                fileName,
                lineOf(event.getStartMark()),
                "the alias *%s is not supported; write the value out."
                    .formatted(((AliasEvent) event).getAlias()));
        case MappingStart, SequenceStart -> {
          depth++;
          if (depth > MAX_DEPTH) {
            throw InputException.at(
                fileName,
                lineOf(event.getStartMark()),
                "values are nested more than %d deep; no file of ours is.".formatted(MAX_DEPTH));
          }
        }
        case MappingEnd, SequenceEnd -> depth--;
        default -> {
          // scalars and the frame of the document
        }
      }
    }
  }

  private static InputException notYaml(String fileName, String text, MarkedYamlEngineException e) {
    int line = e.getProblemMark().map(mark -> mark.getLine() + 1).orElse(1);
    String[] lines = text.split("\\R", -1);
    boolean tab = line <= lines.length && lines[line - 1].matches("\\s*\\t.*");
    if (tab) {
      return InputException.at(
          fileName, line, "the line is indented with a tab; YAML wants spaces there.");
    }
    String problem = e.getProblem() == null ? "" : e.getProblem().strip();
    if (problem.contains("found another document")) {
      return InputException.at(
          fileName,
          line,
          "a second document begins here; expected one document in a file: take out the line of three hyphens, or make two files.");
    }
    return InputException.at(
        fileName,
        line,
        "this is not YAML: %s."
            .formatted(problem.replaceAll("\\s+", " ").replaceAll("[. ]+$", "")));
  }

  static int lineOf(Optional<Mark> mark) {
    return mark.map(m -> m.getLine() + 1).orElse(1);
  }

  private static int lineOf(String text, int position) {
    return 1 + (int) text.codePoints().limit(position).filter(c -> c == '\n').count();
  }
}
