package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Duration;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import java.util.function.Supplier;

/** What the bench answers about work that goes on beside the pages. */
final class LongWorkRoutes {

  /** What is done by then needs no page of its own to wait on. */
  private static final Duration AT_ONCE = Duration.ofMillis(1200);

  private static final Duration WHILE_WAITING = Duration.ofMillis(400);

  private final LongWork work;
  private final Pages pages;
  private final Supplier<String> clock;

  LongWorkRoutes(LongWork work, Pages pages, Supplier<String> clock) {
    this.work = work;
    this.pages = pages;
    this.clock = clock;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/going/{id}", ctx -> answer(ctx, find(ctx), WHILE_WAITING));
    routes.post("/going/{id}/stop", this::stop);
  }

  /** Begins something, and answers with what it leads to or with the page to wait on. */
  void begin(
      Context ctx, String what, String from, Function<LongWork.Piece, LongWork.Answer> task) {
    LongWork.Piece piece = work.begin(what, from, task);
    if (work.within(piece, AT_ONCE).isEmpty()) {
      ctx.redirect("/going/" + piece.id());
      return;
    }
    answer(ctx, piece, AT_ONCE);
  }

  private void stop(Context ctx) {
    LongWork.Piece piece = find(ctx);
    work.stop(piece);
    ctx.redirect("/going/" + piece.id());
  }

  private void answer(Context ctx, LongWork.Piece piece, Duration patience) {
    try {
      work.within(piece, patience)
          .ifPresentOrElse(answer -> give(ctx, answer), () -> ctx.html(pages.waiting(page(piece))));
    } catch (CancellationException e) {
      ctx.redirect(piece.from());
    }
  }

  private static void give(Context ctx, LongWork.Answer answer) {
    if (answer.address().isEmpty()) {
      ctx.status(answer.status()).html(answer.html().get());
    } else {
      ctx.redirect(answer.address());
    }
  }

  private WaitingPage page(LongWork.Piece piece) {
    return new WaitingPage(
        clock.get(),
        piece.id(),
        piece.what(),
        piece.step().isEmpty()
            ? "Something else is worked out first; this comes next."
            : piece.step(),
        "%d s".formatted(work.since(piece).toSeconds()),
        piece.from(),
        piece.stopped());
  }

  private LongWork.Piece find(Context ctx) {
    return work.find(ctx.pathParam("id"))
        .orElseThrow(() -> new NotFoundResponse("That is over; its page is not kept any more."));
  }
}
