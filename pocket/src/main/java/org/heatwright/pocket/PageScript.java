package org.heatwright.pocket;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The compiled core, as the build left it: a module of JavaScript that exports openPocket. */
public final class PageScript {

  private static final String FILE = "pocket-core.js";
  private static final Pattern EXPORTS = Pattern.compile("export\\s*\\{([^}]*)\\};?\\s*$");
  private static final Pattern OPENS = Pattern.compile("([\\w$]+)\\s+as\\s+openPocket\\b");
  private static final Pattern IMPORT = Pattern.compile("(?m)^import \\{ openPocket \\} from .*;$");

  private PageScript() {}

  /** The module itself. */
  public static String core() {
    try (InputStream in = PageScript.class.getResourceAsStream(FILE)) {
      if (in == null) {
        throw new IllegalStateException("The build left no " + FILE + "; build the module again.");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Both in one, for a page that can load nothing: the core's names stay inside it.
   *
   * @param page a module that imports openPocket, on a line of its own
   * @throws IllegalStateException if one of the two is not what it must be
   */
  public static String withCore(String page) {
    String core = core();
    Matcher exports = EXPORTS.matcher(core);
    Matcher imported = IMPORT.matcher(page);
    if (!exports.find() || !imported.find()) {
      throw new IllegalStateException("The core exports nothing, or the page imports nothing.");
    }
    Matcher opens = OPENS.matcher(exports.group(1));
    if (!opens.find()) {
      throw new IllegalStateException("The core does not export openPocket.");
    }
    String all =
        page.substring(0, imported.start())
            + "const openPocket = (() => {\n"
            + core.substring(0, exports.start())
            + "\nreturn "
            + opens.group(1)
            + ";\n})();"
            + page.substring(imported.end());
    if (all.contains("</script") || all.contains("<!--")) {
      throw new IllegalStateException("The script would end its own element.");
    }
    return all;
  }
}
