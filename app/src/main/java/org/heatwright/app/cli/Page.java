package org.heatwright.app.cli;

/** Plain text of at most 80 columns. Belongs to one thread while it is filled. */
final class Page {

  static final int COLUMNS = 80;

  private final StringBuilder text = new StringBuilder();

  /** A paragraph, wrapped at words. */
  Page line(String paragraph) {
    return hanging("", paragraph);
  }

  Page blank() {
    text.append('\n');
    return this;
  }

  /** A paragraph whose lines after the first begin under its words, not under {@code lead}. */
  Page hanging(String lead, String paragraph) {
    String indent = " ".repeat(lead.length());
    StringBuilder line = new StringBuilder(lead);
    boolean empty = true;
    for (String word : paragraph.split(" ", -1)) {
      if (!empty && line.length() + 1 + word.length() > COLUMNS) {
        append(line);
        line = new StringBuilder(indent);
        empty = true;
      }
      line.append(empty ? "" : " ").append(word);
      empty = false;
    }
    append(line);
    return this;
  }

  /** Text as it is. */
  Page raw(String lines) {
    text.append(lines);
    return this;
  }

  private void append(StringBuilder line) {
    text.append(line.toString().stripTrailing()).append('\n');
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
