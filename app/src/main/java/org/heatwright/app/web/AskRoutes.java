package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/** What the bench answers to somebody who asks why, or for a card. */
final class AskRoutes {

  private final AskDesk desk;
  private final Pages pages;
  private final Supplier<String> clock;

  /**
   * @param clock the time as it stands at the head of a page
   */
  AskRoutes(AskDesk desk, Pages pages, Supplier<String> clock) {
    this.desk = desk;
    this.pages = pages;
    this.clock = clock;
  }

  void addTo(RoutesConfig routes) {
    routes.get(
        "/ask",
        ctx -> {
          Map<String, String> asked = new LinkedHashMap<>();
          ctx.queryParamMap().forEach((name, values) -> asked.put(name, values.get(0)));
          ctx.html(pages.ask(desk.page(asked, clock.get())));
        });
  }
}
