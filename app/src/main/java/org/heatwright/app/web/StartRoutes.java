package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.Objects;
import java.util.Optional;
import org.heatwright.app.files.InputException;

/** The first run, and the demo studio beside it. */
final class StartRoutes {

  private final StartDesk desk;
  private final DemoHouse demo;
  private final Pages pages;

  StartRoutes(StartDesk desk, DemoHouse demo, Pages pages) {
    this.desk = desk;
    this.demo = demo;
    this.pages = pages;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/start", this::page);
    routes.post("/start", this::answer);
    routes.post("/start/keep", this::keep);
    routes.post("/start/afresh", this::afresh);
    routes.get("/demo", this::demo);
  }

  private void page(Context ctx) {
    StartDesk.Step step = StartDesk.step(Asked.query(ctx, "step")).orElseGet(desk::next);
    if (step.compareTo(desk.next()) > 0) {
      ctx.redirect(desk.next().address()); // a step before it is not answered
      return;
    }
    ctx.html(pages.start(desk.page(step, false, "", demoAddress())));
  }

  private String demoAddress() {
    return demo.exists() ? "/demo" : "";
  }

  private void answer(Context ctx) {
    StartDesk.Step step = step(ctx);
    desk.keep(step, Asked.form(ctx));
    StartDesk.Step next = desk.next();
    boolean last = step == StartDesk.Step.WORK;
    if (next.compareTo(step) <= 0 && !(last && desk.isDone())) {
      ctx.status(422).html(pages.start(desk.page(step, true, "", demoAddress())));
      return;
    }
    if (!last) {
      ctx.redirect(StartDesk.Step.values()[step.ordinal() + 1].address());
      return;
    }
    try {
      ctx.redirect(desk.finish());
    } catch (InputException e) {
      ctx.status(422)
          .html(
              pages.start(
                  desk.page(step, true, Objects.requireNonNull(e.getMessage()), demoAddress())));
    }
  }

  /** The script tells what was typed so far: right or wrong, it is kept. */
  private void keep(Context ctx) {
    desk.keep(step(ctx), Asked.form(ctx));
    ctx.status(204);
  }

  private void afresh(Context ctx) {
    desk.clear();
    ctx.redirect("/start");
  }

  private void demo(Context ctx) {
    if (!demo.exists()) {
      ctx.redirect("/");
      return;
    }
    String host = Optional.ofNullable(ctx.header("Host")).orElse("");
    ctx.redirect(demo.address("http://" + host + "/"));
  }

  private static StartDesk.Step step(Context ctx) {
    return StartDesk.step(Asked.query(ctx, "step"))
        .orElseThrow(() -> new NotFoundResponse("There is no such step."));
  }
}
