package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
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
      Context ctx,
      String what,
      Place place,
      String from,
      Function<LongWork.Piece, LongWork.Answer> task) {
    LongWork.Piece piece = work.begin(what, place, from, task);
    if (within(piece, AT_ONCE).isEmpty()) {
      ctx.redirect("/going/" + piece.id());
      return;
    }
    answer(ctx, piece, AT_ONCE);
  }

  /**
   * A page that needs something which may take seconds: it comes as soon as that is there; who
   * would have to wait long is shown how far it is, and led back to the page's address.
   *
   * @param what is worked out, in a heading
   * @param place where the page is
   * @param task is told where to say how far it is
   * @param page answers with what it has made
   */
  <T> void before(
      Context ctx, String what, Place place, Function<LongWork.Piece, T> task, Consumer<T> page) {
    CompletableFuture<T> made = new CompletableFuture<>();
    String address = Asked.address(ctx);
    LongWork.Piece piece =
        work.beginAtOnce(
            what,
            place,
            Asked.cameFrom(ctx).filter(before -> !before.equals(address)).orElse("/"),
            told -> {
              made.complete(task.apply(told));
              return LongWork.Answer.at(address);
            });
    if (within(piece, AT_ONCE).isPresent()) {
      page.accept(made.join());
    } else {
      ctx.redirect("/going/" + piece.id());
    }
  }

  private void stop(Context ctx) {
    LongWork.Piece piece = find(ctx);
    work.stop(piece);
    ctx.redirect("/going/" + piece.id());
  }

  private void answer(Context ctx, LongWork.Piece piece, Duration patience) {
    try {
      within(piece, patience)
          .ifPresentOrElse(answer -> give(ctx, answer), () -> ctx.html(pages.waiting(page(piece))));
    } catch (CancellationException e) {
      ctx.redirect(piece.from());
    }
  }

  /** What it leads to; what it has thrown is thrown here, as if no other thread had done it. */
  private Optional<LongWork.Answer> within(LongWork.Piece piece, Duration patience) {
    try {
      return work.within(piece, patience);
    } catch (IllegalStateException failed) {
      throw failed.getCause() instanceof RuntimeException said ? said : failed;
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
        piece.place(),
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
