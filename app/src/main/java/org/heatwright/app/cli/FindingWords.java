package org.heatwright.app.cli;

import java.util.List;
import java.util.Locale;
import org.heatwright.inspect.Finding;
import org.heatwright.inspect.Severity;

/** Findings for people: what would happen, what to do, where the rule is from. */
final class FindingWords {

  private FindingWords() {}

  static void print(List<Finding> findings, Page page) {
    for (Finding finding : findings) {
      boolean place = finding.segment().isPresent() && !finding.message().startsWith("Segment ");
      String segment = place ? "segment " + finding.segment().getAsInt() + ": " : "";
      page.hanging(
          "%-5s ".formatted(word(finding.severity())),
          segment + finding.message() + " (" + finding.origin().words() + ")");
    }
  }

  /** "1 stop, 2 warnings, 1 note.", or "nothing to remark.". */
  static String sum(List<Finding> findings) {
    if (findings.isEmpty()) {
      return "nothing to remark.";
    }
    StringBuilder out = new StringBuilder();
    for (Severity severity : Severity.values()) {
      long count = findings.stream().filter(f -> f.severity() == severity).count();
      if (count > 0) {
        String word = severity == Severity.WARN ? "warning" : word(severity);
        out.append(out.isEmpty() ? "" : ", ")
            .append(count)
            .append(' ')
            .append(word)
            .append(count == 1 ? "" : "s");
      }
    }
    return out.append('.').toString();
  }

  private static String word(Severity severity) {
    return severity.name().toLowerCase(Locale.ROOT);
  }

  static boolean stops(List<Finding> findings) {
    return findings.stream().anyMatch(f -> f.severity() == Severity.STOP);
  }
}
