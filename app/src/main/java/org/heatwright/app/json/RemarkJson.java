package org.heatwright.app.json;

import java.util.List;
import org.heatwright.work.casting.Remark;

/** Something to know with a number, and where it comes from. */
public record RemarkJson(String code, String message, String origin) {
  static List<RemarkJson> of(List<Remark> remarks) {
    return remarks.stream()
        .map(r -> new RemarkJson(r.code(), r.message(), r.origin().words()))
        .toList();
  }
}
