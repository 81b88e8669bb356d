package org.heatwright.app.files;

import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.schema.CoreSchema;

/** Changes values in a YAML text and leaves all else, comments too, as a person wrote it. */
final class YamlEdit {

  private static final LoadSettings SETTINGS =
      LoadSettings.builder()
          .setSchema(new CoreSchema())
          .setCodePointLimit(TextFile.MAX_YAML_BYTES)
          .build();

  private YamlEdit() {}

  /**
   * Puts a value where a path leads, in place of what stands there; mappings on the way that are
   * not there yet are added.
   *
   * @param text a file that {@link YamlFile} reads
   * @param path keys, outermost first; at least one
   * @param yaml the value as YAML on one line
   * @return the changed text
   * @throws InputException if a value on the way is no mapping
   */
  static String put(String text, String fileName, List<String> path, String yaml) {
    Node root = new Compose(SETTINGS).composeString(text).orElseThrow();
    return put(text, fileName, root, path, 0, yaml);
  }

  private static String put(
      String text, String fileName, Node at, List<String> path, int depth, String yaml) {
    if (!(at instanceof MappingNode mapping)) {
      throw InputException.at(
          fileName,
          YamlFile.lineOf(at.getStartMark()),
          "%s is no mapping, so nothing can be put under it; write its keys and values out."
              .formatted(String.join(".", path.subList(0, depth))));
    }
    Optional<Node> there = find(mapping, path.get(depth));
    boolean last = depth == path.size() - 1;
    if (there.isEmpty()) {
      return insert(text, mapping, path.get(depth) + ": " + nested(path, depth + 1, yaml));
    }
    if (last || isEmpty(there.get())) {
      return replace(text, there.get(), nested(path, depth + 1, yaml));
    }
    return put(text, fileName, there.get(), path, depth + 1, yaml);
  }

  private static Optional<Node> find(MappingNode mapping, String key) {
    return mapping.getValue().stream()
        .filter(t -> t.getKeyNode() instanceof ScalarNode s && s.getValue().equals(key))
        .map(NodeTuple::getValueNode)
        .findFirst();
  }

  /** A key with nothing behind it. */
  private static boolean isEmpty(Node node) {
    return node instanceof ScalarNode scalar && scalar.isPlain() && scalar.getValue().isEmpty();
  }

  private static String nested(List<String> path, int from, String yaml) {
    String value = yaml;
    for (int i = path.size() - 1; i >= from; i--) {
      value = "{%s: %s}".formatted(path.get(i), value);
    }
    return value;
  }

  private static String replace(String text, Node old, String yaml) {
    int from = offset(text, old.getStartMark());
    int to = end(text, old);
    boolean apart = from > 0 && Character.isWhitespace(text.charAt(from - 1));
    return text.substring(0, from) + (apart ? "" : " ") + yaml + text.substring(to);
  }

  private static String insert(String text, MappingNode mapping, String entry) {
    List<NodeTuple> entries = mapping.getValue();
    if (entries.isEmpty()) { // only {} has none
      int brace = offset(text, mapping.getEndMark()) - 1;
      return text.substring(0, brace) + entry + text.substring(brace);
    }
    int end = end(text, entries.get(entries.size() - 1).getValueNode());
    if (mapping.getFlowStyle() == FlowStyle.FLOW) {
      return text.substring(0, end) + ", " + entry + text.substring(end);
    }
    int column = entries.get(0).getKeyNode().getStartMark().map(Mark::getColumn).orElse(0);
    int lineEnd = text.indexOf('\n', Math.max(end - 1, 0));
    int at = lineEnd < 0 ? text.length() : lineEnd;
    return text.substring(0, at) + "\n" + " ".repeat(column) + entry + text.substring(at);
  }

  /** Where the text of a node ends; a block's own mark may stand behind the comments after it. */
  private static int end(String text, Node node) {
    if (node instanceof CollectionNode<?> block && block.getFlowStyle() != FlowStyle.FLOW) {
      if (block instanceof MappingNode mapping && !mapping.getValue().isEmpty()) {
        return end(text, mapping.getValue().get(mapping.getValue().size() - 1).getValueNode());
      }
      if (block instanceof SequenceNode sequence && !sequence.getValue().isEmpty()) {
        return end(text, sequence.getValue().get(sequence.getValue().size() - 1));
      }
    }
    return offset(text, node.getEndMark());
  }

  /** Marks count characters as Unicode does. */
  private static int offset(String text, Optional<Mark> mark) {
    return text.offsetByCodePoints(0, mark.map(Mark::getIndex).orElse(0));
  }
}
