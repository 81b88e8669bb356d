package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/** What the bench answers to somebody who asks why, or for a card. */
final class AskRoutes {

  private final AskDesk desk;
  private final LongWorkRoutes longWork;
  private final Pages pages;
  private final Supplier<String> clock;

  /**
   * @param clock the time as it stands at the head of a page
   */
  AskRoutes(AskDesk desk, LongWorkRoutes longWork, Pages pages, Supplier<String> clock) {
    this.desk = desk;
    this.longWork = longWork;
    this.pages = pages;
    this.clock = clock;
  }

  void addTo(RoutesConfig routes) {
    routes.get(
        "/ask",
        ctx -> {
          Map<String, String> asked = new LinkedHashMap<>();
          ctx.queryParamMap().forEach((name, values) -> asked.put(name, values.get(0)));
          longWork.before(
              ctx,
              "Looking for what may be behind it",
              Place.HELP,
              piece -> {
                piece.at("What was told is put beside the plan.");
                return desk.page(asked, clock.get());
              },
              page -> ctx.html(pages.ask(page)));
        });
  }
}
