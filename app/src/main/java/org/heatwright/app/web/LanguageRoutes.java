package org.heatwright.app.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.SameSite;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.heatwright.app.json.Json;
import org.heatwright.app.languages.Language;
import org.heatwright.app.languages.PageTranslator;
import org.heatwright.app.languages.Phrasebook;
import org.heatwright.app.store.Store;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * In which language the bench answers: what was chosen by the switch (a cookie), else what the
 * browser asks for, else English. Every answer is made in English and translated last.
 */
final class LanguageRoutes {

  private static final String COOKIE = "language";
  private static final int YEAR_SECONDS = 31_536_000;

  /** Where a form leads is no page to come back to; the page it stands on is. */
  private static final Map<String, String> FORMS =
      Map.ofEntries(
          Map.entry("/kiln/log", "/kiln"),
          Map.entry("/kiln/learn", "/kiln"),
          Map.entry("/slots/tell", "/slots"),
          Map.entry("/firing/shown", "/firing"),
          Map.entry("/firing/pressed", "/firing"),
          Map.entry("/firing/out", "/firing"),
          Map.entry("/firing/result", "/firing"),
          Map.entry("/firing/note", "/firing"),
          Map.entry("/firing/photo", "/firing"),
          Map.entry("/start/afresh", "/start"),
          Map.entry("/shelf/away", "/shelf"),
          Map.entry("/shelf/back", "/shelf"),
          Map.entry("/archive", "/shelf"));

  private static final Logger LOG = LoggerFactory.getLogger(LanguageRoutes.class);

  private final Store store;
  private final Set<String> failed = ConcurrentHashMap.newKeySet();
  private final Map<Language, Phrasebook> books = new ConcurrentHashMap<>();

  LanguageRoutes(Store store) {
    this.store = store;
  }

  void addTo(RoutesConfig routes) {
    routes.get("/language/{tag}", LanguageRoutes::choose);
    routes.get("/languages/words.js", LanguageRoutes::words);
    // What a form was answered with has the form's address: opened again, it is the form's page.
    FORMS.forEach(
        (form, page) ->
            routes.get(
                form,
                ctx ->
                    ctx.redirect(
                        page
                            + Optional.ofNullable(ctx.queryString())
                                .map(query -> "?" + query)
                                .orElse(""))));
    routes.after(this::translate);
  }

  static Language of(Context ctx) {
    return Optional.ofNullable(ctx.cookie(COOKIE))
        .flatMap(Language::ofTag)
        .orElseGet(
            () ->
                Language.preferred(Optional.ofNullable(ctx.header("Accept-Language")).orElse("")));
  }

  private static void choose(Context ctx) {
    Language language =
        Language.ofTag(ctx.pathParam("tag"))
            .orElseThrow(() -> new NotFoundResponse("The bench does not speak that language."));
    Cookie cookie = new Cookie(COOKIE, language.tag());
    cookie.setMaxAge(YEAR_SECONDS);
    cookie.setHttpOnly(true);
    cookie.setSameSite(SameSite.STRICT);
    ctx.cookie(cookie);
    ctx.redirect(back(Optional.ofNullable(ctx.header("Referer")).orElse("")));
  }

  /** The page the switch was on, in this bench. */
  private static String back(String referer) {
    try {
      URI from = URI.create(referer);
      String path = Optional.ofNullable(from.getRawPath()).orElse("/");
      String page = FORMS.getOrDefault(path, path.startsWith("/") ? path : "/");
      String query = Optional.ofNullable(from.getRawQuery()).map(q -> "?" + q).orElse("");
      return page.startsWith("//") ? "/" : page + query;
    } catch (IllegalArgumentException e) {
      return "/";
    }
  }

  /** What the scripts say, as a module. */
  private static void words(Context ctx) {
    Language language = of(ctx);
    Map<String, String> words =
        language == Language.ENGLISH
            ? Map.of()
            : Phrasebook.of(language).dictionary(Phrasebook.SCRIPTS);
    ctx.contentType("text/javascript; charset=utf-8")
        .result("export default " + Json.inPage(new Words(language.tag(), words)) + ";\n");
  }

  /**
   * @param lang the language's tag
   * @param words English to the other language
   */
  private record Words(String lang, Map<String, String> words) {}

  /** The language's book with the names that are on this shelf now. */
  private Phrasebook book(Language language) {
    return Objects.requireNonNull(
        books.compute(
            language,
            (l, before) -> {
              Set<String> names = names(store);
              return before != null && before.names().equals(names)
                  ? before
                  : Phrasebook.of(l).with(names);
            }));
  }

  /** What people have named: it is not translated. */
  static Set<String> names(Store store) {
    return store.names();
  }

  private void translate(Context ctx) {
    ctx.header("Vary", "Accept-Language, Cookie");
    Language language = of(ctx);
    String type = Optional.ofNullable(ctx.res().getContentType()).orElse("");
    if (language == Language.ENGLISH || !translated(ctx, type)) {
      return;
    }
    String text = Objects.requireNonNullElse(ctx.result(), "");
    if (text.isEmpty()) {
      return;
    }
    try {
      ctx.result(said(language, type, text).getBytes(StandardCharsets.UTF_8));
    } catch (RuntimeException | StackOverflowError e) {
      if (failed.add(ctx.path())) {
        LOG.warn("{} could not be put into {}; it is shown in English.", ctx.path(), language, e);
      }
    }
  }

  private String said(Language language, String type, String text) {
    PageTranslator translator = new PageTranslator(language, book(language), unknown -> {});
    if (type.startsWith("text/html")) {
      return translator.page(text);
    }
    if (type.startsWith("image/svg")) {
      return translator.drawing(text);
    }
    return type.startsWith("application/json")
        ? translator.answer(text)
        : translator.sentence(text);
  }

  /** Pages, drawings, the script's answers and what went wrong; no file that a person kept. */
  private static boolean translated(Context ctx, String type) {
    return type.startsWith("text/html")
        || type.startsWith("image/svg")
        || (type.startsWith("application/json") && ctx.path().startsWith("/plan"))
        || (type.startsWith("text/plain") && ctx.statusCode() >= 400);
  }
}
