package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Supplier;
import org.heatwright.app.files.InputException;
import org.heatwright.app.store.Store;

/** What the bench answers about materials: every value with its source, and a person's own. */
final class MaterialsRoutes {

  private final ValuesDesk values;
  private final MaterialsDesk desk;
  private final Pages pages;
  private final Supplier<String> clock;

  /**
   * @param clock the time as it stands at the head of a page
   */
  MaterialsRoutes(Store store, Pages pages, Supplier<String> clock) {
    this.values = new ValuesDesk(store);
    this.desk = new MaterialsDesk(store, values);
    this.pages = pages;
    this.clock = clock;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/materials", ctx -> ctx.html(page(ctx, told(ctx))));
    routes.get("/materials/own", this::form);
    routes.post("/materials/own", this::keep);
    routes.post("/materials/into", this::put);
    routes.post("/materials/back", this::back);
  }

  private String page(Context ctx, MaterialsPage.Told told) {
    return pages.materials(
        desk.page(clock.get(), Asked.query(ctx, "q"), Asked.query(ctx, "unit"), told));
  }

  private static MaterialsPage.Told told(Context ctx) {
    return new MaterialsPage.Told(
        Asked.query(ctx, "kept"),
        Asked.query(ctx, "put"),
        MaterialsPage.Where.of(Asked.query(ctx, "into")),
        MaterialsPage.Where.of(Asked.query(ctx, "back")),
        "");
  }

  private void form(Context ctx) {
    Map<String, String> asked = Asked.fields(Optional.ofNullable(ctx.queryString()).orElse(""));
    ctx.html(
        pages.values(
            values
                .form(clock.get(), asked)
                .orElseThrow(
                    () -> new NotFoundResponse("There are no such values on the shelf."))));
  }

  private void keep(Context ctx) {
    Map<String, String> typed = Asked.form(ctx);
    Optional<ValuesPage> again = values.keep(clock.get(), typed);
    if (again.isPresent()) {
      ctx.status(422).html(pages.values(again.get()));
    } else {
      Map<String, String> told = new LinkedHashMap<>();
      told.put("unit", typed.getOrDefault("unit", "C"));
      told.put("kept", typed.getOrDefault("name", "").strip());
      ctx.redirect(address(told));
    }
  }

  private void put(Context ctx) {
    Map<String, String> form = Asked.form(ctx);
    String name = form.getOrDefault("values", "");
    String work = form.getOrDefault("work", "");
    try {
      values.put(name, work);
      Map<String, String> told = new LinkedHashMap<>();
      told.put("put", name);
      told.put("into", work);
      ctx.redirect(address(told));
    } catch (InputException e) {
      ctx.status(422)
          .html(
              page(
                  ctx,
                  new MaterialsPage.Told(
                      "",
                      name,
                      MaterialsPage.Where.of(""),
                      MaterialsPage.Where.of(""),
                      Objects.requireNonNull(e.getMessage()))));
    }
  }

  private void back(Context ctx) {
    String work = Asked.form(ctx).getOrDefault("work", "");
    values.back(work);
    ctx.redirect(address(Map.of("back", work)));
  }

  private static String address(Map<String, String> told) {
    StringBuilder query = new StringBuilder();
    told.forEach(
        (key, value) ->
            query
                .append(query.isEmpty() ? '?' : '&')
                .append(key)
                .append('=')
                .append(URLEncoder.encode(value, StandardCharsets.UTF_8)));
    return "/materials" + query + "#mine";
  }
}
