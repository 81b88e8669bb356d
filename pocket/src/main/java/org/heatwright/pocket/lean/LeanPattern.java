package org.heatwright.pocket.lean;

import org.teavm.jso.JSBody;
import org.teavm.jso.JSObject;

/**
 * A pattern, matched by the browser. The core's patterns mean the same there, but for blanks, of
 * which a browser knows more.
 */
public final class LeanPattern {

  private final String regex;
  private final JSObject whole;

  private LeanPattern(String regex) {
    this.regex = regex.replace("\\s", " \\t\\n\\v\\f\\r");
    this.whole = browsers("^(?:" + this.regex + ")$", "");
  }

  public static LeanPattern compile(String regex) {
    return new LeanPattern(regex);
  }

  public static boolean matches(String regex, CharSequence text) {
    return compile(regex).matcher(text).matches();
  }

  public LeanMatcher matcher(CharSequence text) {
    return new LeanMatcher(this, text.toString());
  }

  JSObject whole() {
    return whole;
  }

  JSObject everywhere() {
    return browsers(regex, "g");
  }

  @JSBody(
      params = {"regex", "flags"},
      script = "return new RegExp(regex, flags);")
  private static native JSObject browsers(String regex, String flags);
}
