package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.Optional;
import java.util.function.Supplier;
import org.heatwright.units.TemperatureUnit;

/** What the bench answers about enamelled pieces. */
final class PiecesRoutes {

  private final PiecesDesk desk;
  private final Pages pages;
  private final Supplier<String> clock;

  /**
   * @param clock the time as it stands at the head of a page
   */
  PiecesRoutes(PiecesDesk desk, Pages pages, Supplier<String> clock) {
    this.desk = desk;
    this.pages = pages;
    this.clock = clock;
  }

  void addTo(RoutesConfig routes) {
    routes.get(
        "/pieces", ctx -> ctx.html(pages.pieces(desk.page(clock.get(), asked(ctx), unit(ctx)))));
    routes.post("/pieces", this::keep);
  }

  private void keep(Context ctx) {
    asked(ctx).ifPresent(desk::keep);
    ctx.redirect("/pieces?unit=%s#kept".formatted(unit(ctx).letter()));
  }

  private static Optional<PiecesDesk.Asked> asked(Context ctx) {
    return given(ctx, "log")
        .map(
            log ->
                new PiecesDesk.Asked(
                    given(ctx, "kiln").orElse(""),
                    log,
                    given(ctx, "work").orElse(""),
                    given(ctx, "openings").filter(o -> o.equals("two")).isPresent()));
  }

  private static TemperatureUnit unit(Context ctx) {
    return given(ctx, "unit").flatMap(TemperatureUnit::ofLetter).orElse(TemperatureUnit.CELSIUS);
  }

  private static Optional<String> given(Context ctx, String name) {
    return Optional.ofNullable(ctx.queryParam(name))
        .or(() -> Optional.ofNullable(ctx.formParam(name)));
  }
}
