package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.heatwright.app.files.InputException;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.store.FiringEntry;

/** What the bench answers about firings that run and firings that are past. */
final class FiringRoutes {

  private final FiringDesk desk;
  private final LongWorkRoutes longWork;
  private final Pages pages;

  FiringRoutes(FiringDesk desk, LongWorkRoutes longWork, Pages pages) {
    this.desk = desk;
    this.longWork = longWork;
    this.pages = pages;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/firings", ctx -> ctx.html(pages.firings(desk.book(Asked.query(ctx, "kiln")))));
    routes.get("/firing", this::page);
    routes.get("/firing/photo/{line}", this::photo);
    routes.post("/firing/pressed", this::pressed);
    routes.post("/firing/shown", ctx -> tell(ctx, true, f -> desk.shown(f, form(ctx))));
    routes.post("/firing/out", ctx -> tell(ctx, true, f -> desk.out(f, form(ctx))));
    routes.post("/firing/result", ctx -> tell(ctx, false, f -> desk.result(f, form(ctx))));
    routes.post("/firing/note", ctx -> tell(ctx, false, f -> desk.note(f, form(ctx))));
    routes.post("/firing/photo", ctx -> tell(ctx, false, f -> photo(ctx, f)));
    routes.post("/firing/back", this::takeBack);
    routes.post("/firing/away", this::putAway);
  }

  /** What is hot, what comes next. */
  void now(Context ctx) {
    ctx.html(pages.now(desk.now(FiringDesk.Trouble.none())));
  }

  /** Puts a plan into the book, pressed or to be pressed. */
  void put(Context ctx, Firing firing) {
    if (!firing.program().fits()) {
      throw new BadRequestResponse(firing.program().refusals().get(0).message());
    }
    boolean pressed = ctx.formParam("pressed") != null;
    if (!pressed || isFree(ctx, firing.choices().kiln(), "")) {
      desk.put(firing, pressed);
      ctx.redirect("/");
    }
  }

  private void pressed(Context ctx) {
    FiringRecord firing = firing(ctx);
    if (isFree(ctx, firing.entry().kiln(), firing.id())) {
      tell(ctx, true, f -> desk.pressed(f, form(ctx)));
    }
  }

  /**
   * Whether a kiln can be started: a firing that is under way in it was told to be out, now at
   * last. Else asks whether it is.
   *
   * @param start of this firing; empty for a new one
   */
  private boolean isFree(Context ctx, String kiln, String start) {
    String out = form(ctx).getOrDefault("out", "");
    for (FiringRecord running : desk.running(kiln)) {
      if (running.id().equals(out)) {
        desk.out(running, Map.of());
      } else if (!running.id().equals(start)) {
        ctx.status(409).html(pages.stillHot(desk.stillHot(running, Asked.address(ctx), form(ctx))));
        return false;
      }
    }
    return true;
  }

  /**
   * Takes in what a person told, and shows the page it was told on.
   *
   * @param now true if it is told where what is hot stands
   */
  private void tell(Context ctx, boolean now, Consumer<FiringRecord> what) {
    FiringRecord firing = firing(ctx);
    boolean fromNow = now && ctx.formParam("from") == null;
    try {
      what.accept(firing);
    } catch (InputException e) {
      FiringDesk.Trouble trouble =
          new FiringDesk.Trouble(firing.id(), e.fileName(), sentence(e), form(ctx));
      ctx.status(422).html(fromNow ? pages.now(desk.now(trouble)) : page(ctx, trouble));
      return;
    }
    ctx.redirect(fromNow ? "/#f-" + firing.id() : FiringDesk.address(firing.id()));
  }

  /** Without the field's name: the sentence stands beside the field. */
  private static String sentence(InputException e) {
    String message = Objects.requireNonNull(e.getMessage());
    String field = e.fileName() + ": ";
    return message.startsWith(field)
        ? Character.toUpperCase(message.charAt(field.length()))
            + message.substring(field.length() + 1)
        : message;
  }

  private void page(Context ctx) {
    FiringRecord firing = firing(ctx);
    String back = Asked.query(ctx, "back");
    longWork.before(
        ctx,
        "Working out what the firing does",
        Place.FIRINGS,
        piece -> {
          piece.at("What was told of it is put beside its forecast.");
          return desk.page(firing, back, FiringDesk.Trouble.none());
        },
        page -> ctx.html(pages.firing(page)));
  }

  private String page(Context ctx, FiringDesk.Trouble trouble) {
    return pages.firing(desk.page(firing(ctx), Asked.query(ctx, "back"), trouble));
  }

  private void photo(Context ctx, FiringRecord firing) {
    UploadedFile file =
        Optional.ofNullable(ctx.uploadedFile("photo"))
            .filter(f -> f.size() > 0)
            .orElseThrow(() -> InputException.in("photo", "choose a picture first."));
    try (InputStream in = file.content()) {
      desk.photo(firing, in.readAllBytes(), form(ctx));
    } catch (IOException e) {
      throw new UncheckedIOException("The picture that was sent cannot be read.", e);
    }
  }

  private void photo(Context ctx) {
    FiringEntry.Photo photo =
        desk.photo(ctx.pathParam("line"))
            .orElseThrow(() -> new NotFoundResponse("There is no such picture."));
    ctx.contentType(photo.mediaType()).result(photo.picture());
  }

  private void takeBack(Context ctx) {
    FiringRecord firing = firing(ctx);
    Map<String, String> form = form(ctx);
    boolean back = !form.containsKey("again");
    String line = form.getOrDefault("line", "");
    desk.takeBack(firing, line, back);
    ctx.redirect(FiringDesk.address(firing.id()) + (back ? "&back=" + line : ""));
  }

  private void putAway(Context ctx) {
    FiringRecord firing = firing(ctx);
    desk.putAway(firing, ctx.formParam("again") == null);
    ctx.redirect(FiringDesk.address(firing.id()));
  }

  private FiringRecord firing(Context ctx) {
    return desk.find(Asked.query(ctx, "id"))
        .orElseThrow(() -> new NotFoundResponse("There is no such firing in the book."));
  }

  private static Map<String, String> form(Context ctx) {
    return Asked.form(ctx);
  }
}
