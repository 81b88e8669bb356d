package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.heatwright.app.store.AwayShelf;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;
import org.heatwright.forecast.ClockWords;

/** What is on the shelf: each thing can be put away, and put back. */
final class ShelfRoutes {

  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.UK);
  private static final int CARDS_SHOWN = 200;

  private final Store store;
  private final Clock clock;
  private final Pages pages;

  ShelfRoutes(Store store, Clock clock, Pages pages) {
    this.store = store;
    this.clock = clock;
    this.pages = pages;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/shelf", ctx -> ctx.html(page(ctx, Moved.nothing())));
    routes.post("/shelf/away", this::putAway);
    routes.post("/shelf/back", this::putBack);
  }

  private void putAway(Context ctx) {
    Map<String, String> form = Asked.form(ctx);
    String id = form.getOrDefault("id", "");
    if (!store.away().putAway(form.getOrDefault("what", ""), id)) {
      throw new NotFoundResponse("That is not on the shelf any more.");
    }
    ctx.redirect("/shelf?undo=" + encoded(id));
  }

  private void putBack(Context ctx) {
    String name =
        store
            .away()
            .putBack(Asked.form(ctx).getOrDefault("id", ""))
            .orElseThrow(() -> new NotFoundResponse("That was not put away."));
    ctx.redirect("/shelf?back=" + encoded(name));
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  /** The page, with what came of an archive. */
  String page(Context ctx, Moved moved) {
    String undo = Asked.query(ctx, "undo");
    return pages.shelf(
        new ShelfPage(
            ClockWords.stamp(clock.instant().atZone(clock.getZone())),
            groups(),
            store.away().all().stream().map(this::away).toList(),
            store.away().find(undo).map(this::away),
            Asked.query(ctx, "back"),
            moved));
  }

  private ShelfPage.Away away(AwayShelf.Away away) {
    return new ShelfPage.Away(away.id(), away.what(), away.name(), day(away.removed()));
  }

  private List<ShelfPage.Group> groups() {
    Map<String, List<ShelfPage.Thing>> groups = new LinkedHashMap<>();
    groups.put("Kilns", documents(Kind.KILN));
    groups.put("Keypads", documents(Kind.KEYPAD));
    groups.put("Work", documents(Kind.WORK));
    groups.put("Schedules", documents(Kind.SCHEDULE));
    groups.put("Your own values", documents(Kind.VALUES));
    groups.put(
        "Cards",
        store.newestCards(CARDS_SHOWN).stream()
            .map(
                card ->
                    new ShelfPage.Thing(
                        "card", card.id(), card.name(), "/cards/" + card.id(), day(card.made())))
            .toList());
    List<ShelfPage.Thing> logs = new ArrayList<>();
    for (Document kiln : store.all(Kind.KILN)) {
      store
          .logs(kiln.name())
          .forEach(
              log ->
                  logs.add(
                      new ShelfPage.Thing(
                          "log",
                          log.id(),
                          log.name(),
                          KilnDesk.address(kiln.name()) + "&log=" + log.id() + "#watched",
                          kiln.name() + ", " + DAY.format(log.date()))));
    }
    groups.put("Logs", logs);
    return groups.entrySet().stream()
        .filter(group -> !group.getValue().isEmpty())
        .map(group -> new ShelfPage.Group(group.getKey(), group.getValue()))
        .toList();
  }

  private List<ShelfPage.Thing> documents(Kind kind) {
    return store.all(kind).stream()
        .map(
            document ->
                new ShelfPage.Thing(
                    kind.word(),
                    document.id(),
                    document.name(),
                    address(kind, document),
                    day(document.changed())))
        .toList();
  }

  private static String address(Kind kind, Document document) {
    return switch (kind) {
      case KILN -> KilnDesk.address(document.name());
      case WORK -> "/plan?work=" + encoded(document.name());
      case KEYPAD -> "/plan?keypad=" + encoded(document.name());
      case SCHEDULE -> "/schedules/" + document.id();
      case VALUES -> ValuesDesk.address(document.name());
    };
  }

  private String day(Instant moment) {
    return DAY.format(moment.atZone(clock.getZone()));
  }
}
