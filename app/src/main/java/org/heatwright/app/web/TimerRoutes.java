package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Objects;
import java.util.function.Function;
import org.heatwright.app.files.InputException;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.json.Json;

/** What the bench answers about pieces that go in and out of a hot kiln. */
final class TimerRoutes {

  private final TimerDesk desk;
  private final Pages pages;
  private final Function<Context, Firing> plans;

  TimerRoutes(TimerDesk desk, Pages pages, Function<Context, Firing> plans) {
    this.desk = desk;
    this.pages = pages;
    this.plans = plans;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/timer", this::page);
    routes.post("/timer/piece", this::tell);
  }

  private void page(Context ctx) {
    String heat = Asked.query(ctx, "heat");
    try {
      ctx.html(
          pages.timer(
              (ctx.queryParam("firing") == null
                      ? desk.page(plans.apply(ctx), heat)
                      : desk.page(firing(ctx), heat))
                  .orElseThrow(
                      () ->
                          new BadRequestResponse(
                              "The timer is for pieces that go in and out of a hot kiln: for enamel."))));
    } catch (InputException e) {
      throw new BadRequestResponse(Objects.requireNonNull(e.getMessage()));
    }
  }

  private void tell(Context ctx) {
    TimerJson.Told told = desk.tell(firing(ctx), Asked.form(ctx));
    ctx.status(told.error().isEmpty() ? 200 : 422)
        .contentType("application/json; charset=utf-8")
        .result(Json.text(told));
  }

  private FiringRecord firing(Context ctx) {
    return desk.find(Asked.query(ctx, "firing"))
        .orElseThrow(() -> new NotFoundResponse("There is no such firing in the book."));
  }
}
