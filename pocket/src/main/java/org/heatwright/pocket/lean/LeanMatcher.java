package org.heatwright.pocket.lean;

import org.jspecify.annotations.Nullable;
import org.teavm.jso.JSBody;
import org.teavm.jso.JSObject;

/** One text beside one pattern. */
public final class LeanMatcher {

  private final LeanPattern pattern;
  private final String text;
  private @Nullable JSObject found;

  LeanMatcher(LeanPattern pattern, String text) {
    this.pattern = pattern;
    this.text = text;
  }

  public boolean matches() {
    found = match(pattern.whole(), text);
    return found != null;
  }

  public String group(int number) {
    if (found == null) {
      throw new IllegalStateException("Nothing is matched yet.");
    }
    return group(found, number);
  }

  public String replaceAll(String by) {
    return replace(pattern.everywhere(), text, by);
  }

  @JSBody(
      params = {"regex", "text"},
      script = "return regex.exec(text);")
  private static native @Nullable JSObject match(JSObject regex, String text);

  @JSBody(
      params = {"found", "number"},
      script = "return found[number];")
  private static native String group(JSObject found, int number);

  @JSBody(
      params = {"regex", "text", "by"},
      script = "return text.replace(regex, by);")
  private static native String replace(JSObject regex, String text, String by);
}
