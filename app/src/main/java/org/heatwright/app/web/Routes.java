package org.heatwright.app.web;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.javalin.config.RoutesConfig;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import io.javalin.http.ForbiddenResponse;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.http.NotFoundResponse;
import io.javalin.http.UploadedFile;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import org.heatwright.app.describe.Described;
import org.heatwright.app.files.InputException;
import org.heatwright.app.files.ScheduleFile;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.json.ForecastJson;
import org.heatwright.app.json.Json;
import org.heatwright.app.plot.Figure;
import org.heatwright.app.plot.Png;
import org.heatwright.app.plot.Svg;
import org.heatwright.app.report.CalendarFile;
import org.heatwright.app.report.CardPdf;
import org.heatwright.app.report.PageSize;
import org.heatwright.app.report.PocketPage;
import org.heatwright.app.report.RegisterPdf;
import org.heatwright.app.store.AnswerShelf;
import org.heatwright.app.store.CardEntry;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.StoreException;
import org.heatwright.forecast.EnsembleProgress;
import org.heatwright.forecast.ForecastRequest;
import org.heatwright.keypad.register.Role;
import org.heatwright.pocket.PageScript;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What the bench answers to. */
final class Routes {

  private static final Logger LOG = LoggerFactory.getLogger(Routes.class);
  private static final Set<String> HOSTS = Set.of("127.0.0.1", "localhost", "[::1]");
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
          + " connect-src 'self'; worker-src 'self'; manifest-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
  private static final ObjectMapper READER = new ObjectMapper();
  private static final int LONGEST_FILE = 200_000;
  private static final String NO_PAGE = "There is no such page here.";
  private static final String NOT_WANTED =
      "This is not wanted any more: it was stopped, or another value was typed.";

  private final BenchSettings settings;
  private final FiringPlanner planner;
  private final PageWords words;
  private final KilnDesk desk;
  private final SlotsDesk slots;
  private final Pages pages;
  private final FiringRoutes firings;
  private final LongWorkRoutes longWork;
  private final TimerRoutes timer;
  private final StartDesk start;
  private final DemoHouse demo;
  private final AskRoutes ask;
  private final HeatworkDesk heatwork;
  private final Typing typing = new Typing();

  Routes(BenchSettings settings, LongWork work, DemoHouse demo) {
    this.settings = settings;
    this.pages = new Pages(settings.demo());
    this.start = new StartDesk(settings.store(), settings.clock());
    this.demo = demo;
    Forecasts forecasts = new Forecasts();
    this.planner = new FiringPlanner(settings.store(), settings.clock(), forecasts);
    this.slots = new SlotsDesk(settings.store(), settings.clock());
    this.words = new PageWords(settings.store(), settings.clock(), slots);
    this.desk = new KilnDesk(settings.store(), settings.clock());
    this.longWork = new LongWorkRoutes(work, pages, words::clock);
    FiringDesk records = new FiringDesk(settings.store(), settings.clock(), slots, forecasts);
    this.firings = new FiringRoutes(records, longWork, pages);
    this.heatwork = new HeatworkDesk(settings.store(), records);
    this.ask =
        new AskRoutes(
            new AskDesk(settings.store(), planner, records), longWork, pages, words::clock);
    this.timer =
        new TimerRoutes(
            new TimerDesk(new FiringBook(settings.store(), settings.clock()), settings.clock()),
            pages,
            this::firing);
  }

  /** Works out what the plan's page opens with, so that it is there when it is asked for. */
  void workOutOpening() {
    PlanResult result = planner.plan(opening(), ForecastRequest.USUAL_DRAWS);
    pages.whole(words.page(result, Optional.empty()));
  }

  private Choices opening() {
    return Choices.of(settings.opening());
  }

  void addTo(RoutesConfig routes) {
    routes.before(Routes::guard);
    new LanguageRoutes(settings.store()).addTo(routes);
    routes.get("/health", this::health);
    routes.get("/", this::now);
    routes.get("/plan", this::page);
    routes.post("/plan", this::plan);
    routes.post("/plan/curve", this::curve);
    routes.post("/firings", ctx -> firings.put(ctx, firing(ctx)));
    firings.addTo(routes);
    longWork.addTo(routes);
    timer.addTo(routes);
    new PhoneRoutes(pages).addTo(routes);
    new StartRoutes(start, demo, pages).addTo(routes);
    ShelfRoutes shelf = new ShelfRoutes(settings.store(), settings.clock(), pages);
    shelf.addTo(routes);
    new ArchiveRoutes(settings.store(), settings.clock(), shelf).addTo(routes);
    ask.addTo(routes);
    new PiecesRoutes(new PiecesDesk(settings.store(), settings.clock()), pages, words::clock)
        .addTo(routes);
    routes.get(
        "/heatwork",
        ctx ->
            longWork.before(
                ctx,
                "Comparing two schedules",
                Place.PLAN,
                piece -> {
                  piece.at("Both are fired in kilns like this one.");
                  return heatwork.page(
                      words.clock(),
                      Asked.fields(Optional.ofNullable(ctx.queryString()).orElse("")));
                },
                page -> ctx.html(pages.heatwork(page))));
    routes.get(
        "/readback",
        ctx -> afterPlanning(ctx, Asked.choices(ctx), result -> readback(ctx, result, false)));
    routes.post("/readback", ctx -> readback(ctx, planOf(ctx), true));
    routes.get(
        "/rehearse",
        ctx -> afterPlanning(ctx, Asked.choices(ctx), result -> rehearse(ctx, firing(result))));
    routes.get("/pocket.html", this::pocketFile);
    routes.get("/pocket-core.js", Routes::pocketCore);
    routes.post("/card", this::card);
    routes.get("/cards/{id}", this::keptCard);
    routes.get("/calendar.ics", this::calendar);
    routes.post("/keep", this::keep);
    routes.post("/shelf", this::shelve);
    routes.post("/shelf/scan", this::scan);
    routes.get("/keypad/new", this::describe);
    routes.post("/keypad/new", this::describe);
    routes.get("/schedules/{id}", this::keptSchedule);
    routes.get(
        "/inside",
        ctx -> afterPlanning(ctx, Asked.choices(ctx), result -> inside(ctx, firing(result))));
    routes.get("/inside/section", this::section);
    routes.get(
        "/pour",
        ctx -> {
          if (Asked.query(ctx, "plan").isEmpty()) {
            pour(ctx, Optional.empty());
          } else {
            afterPlanning(
                ctx, Asked.choices(ctx), result -> pour(ctx, Optional.of(firing(result))));
          }
        });
    routes.get("/kilns", ctx -> ctx.html(pages.kilns(desk.all(words.clock()))));
    new MaterialsRoutes(settings.store(), pages, words::clock).addTo(routes);
    routes.get("/help", ctx -> ctx.html(pages.help(Help.page(words.clock()))));
    routes.get("/kiln", this::kiln);
    routes.post("/kiln/log", this::bringLog);
    routes.post("/kiln/learn", this::learn);
    routes.get("/kiln/{plot}", this::plot);
    routes.get("/slots", this::slots);
    routes.post("/slots/tell", this::tellSlots);
    routes.post("/slots/keyed", this::keyed);
    routes.get("/slots/read", ctx -> unknownSlot(ctx, false));
    routes.post("/slots/read", ctx -> unknownSlot(ctx, true));
    routes.get("/slots/register.pdf", this::registerPdf);
    routes.exception(
        HttpResponseException.class,
        (e, ctx) -> {
          String sentence = Objects.requireNonNullElse(e.getMessage(), NO_PAGE);
          tell(ctx, e.getStatus(), sentence.startsWith("Endpoint ") ? NO_PAGE : sentence);
        });
    routes.exception(
        StoreException.class, (e, ctx) -> tell(ctx, 503, Objects.requireNonNull(e.getMessage())));
    routes.exception(CancellationException.class, (e, ctx) -> tell(ctx, 409, NOT_WANTED));
    routes.exception(
        Exception.class,
        (e, ctx) -> {
          LOG.error("The bench could not answer {} {}", ctx.method(), ctx.path(), e);
          tell(ctx, 500, "The bench could not work that out; the terminal it runs in says more.");
        });
  }

  /**
   * Only pages of our own may ask: a foreign page's requests carry its origin, and a foreign name
   * that was made to point here carries that name.
   */
  private static void guard(Context ctx) {
    ctx.header("Content-Security-Policy", POLICY);
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("Referrer-Policy", "same-origin");
    ctx.header("Cache-Control", "no-store");
    String host = Optional.ofNullable(ctx.header("Host")).orElse("");
    String name = host.replaceFirst(":\\d+$", "");
    String origin = Optional.ofNullable(ctx.header("Origin")).orElse("http://" + host);
    if (!HOSTS.contains(name) || !origin.equals("http://" + host)) {
      throw new ForbiddenResponse("The bench answers its own pages only.");
    }
  }

  private void health(Context ctx) {
    boolean well = settings.store().answers();
    ctx.status(well ? 200 : 503)
        .contentType("application/json")
        .result("{\"store\":%s}".formatted(well));
  }

  /** What is hot; an address of a plan from before the plan had its own place still leads there. */
  private void now(Context ctx) {
    if (ctx.queryParamMap().isEmpty()) {
      firings.now(ctx);
    } else {
      ctx.redirect("/plan?" + Asked.choices(ctx).query());
    }
  }

  private void page(Context ctx) {
    if (ctx.queryParam("plan") != null) {
      ctx.redirect("/plan?" + Asked.choices(ctx).query());
      return;
    }
    afterPlanning(
        ctx,
        ctx.queryParamMap().isEmpty() ? opening() : Asked.choices(ctx),
        result -> ctx.html(pages.whole(words.page(result, Optional.empty()))));
  }

  /** A page that shows a plan: until that is worked out, it is shown how far it is. */
  private void afterPlanning(Context ctx, Choices choices, Consumer<PlanResult> page) {
    longWork.before(
        ctx,
        "Working out the plan",
        Place.PLAN,
        piece -> {
          piece.at("The firing is tried in kilns like this one.");
          return planner.plan(
              choices,
              ForecastRequest.USUAL_DRAWS,
              (part, done, of) -> piece.at(HowFar.sentence(part, done, of)));
        },
        page);
  }

  /** The script asks: the parts of the page that follow from the choices, or what is wrong. */
  private void plan(Context ctx) {
    Edited asked = edited(ctx);
    int draws = asked.quick() ? 1 : ForecastRequest.USUAL_DRAWS;
    PlanResult result = planner.plan(asked.choices(), draws, asked.wanted());
    PlanAnswer answer =
        new PlanAnswer(
            result.errors(),
            result.refusal(),
            result.choices().query(),
            result.choices().of(),
            result.notes(),
            draws,
            result
                .firing()
                .map(
                    f ->
                        ForecastJson.of(
                            f.forecast(), f.cost(), Optional.of(f.start()), f.findings())),
            result.errors().isEmpty()
                ? pages.parts(words.page(result, Optional.empty()))
                : Map.of());
    ctx.contentType("application/json; charset=utf-8").result(Json.text(answer));
  }

  /** While a value is edited: the sketch of one draw, or the display's band before all else. */
  private void curve(Context ctx) {
    Edited asked = edited(ctx);
    PlanResult result = planner.sketch(asked.choices());
    Optional<Firing> firing = result.firing().filter(f -> result.errors().isEmpty());
    Optional<String> answer =
        firing.filter(f -> asked.quick()).map(f -> pages.answered(words.answered(f)));
    Optional<CurveJson> curve =
        firing.map(
            f ->
                CurveJson.of(
                    asked.quick()
                        ? Curves.plan(f)
                        : Curves.band(f, planner.display(f, asked.wanted())),
                    PageWords.summary(f)));
    ctx.contentType("application/json; charset=utf-8")
        .result(Json.inPage(new CurveAnswer(result.errors(), answer, curve)));
  }

  /**
   * What the script asks for.
   *
   * @param quick a sketch
   * @param wanted ends it when another value has been typed since
   */
  private record Edited(Choices choices, boolean quick, EnsembleProgress wanted) {}

  private Edited edited(Context ctx) {
    Map<String, String> fields = new LinkedHashMap<>();
    try {
      JsonNode asked = READER.readTree(ctx.body());
      asked.path("fields").properties().forEach(e -> fields.put(e.getKey(), e.getValue().asText()));
      boolean quick = asked.path("draws").asInt() == 1;
      EnsembleProgress wanted =
          typing.typed(asked.path("page").asText(), asked.path("number").asLong());
      return new Edited(Choices.of(fields), quick, quick ? EnsembleProgress.UNTOLD : wanted);
    } catch (JsonProcessingException e) {
      throw new BadRequestResponse("The body must be JSON with fields and draws.");
    }
  }

  private void readback(Context ctx, PlanResult result, boolean answered) {
    Optional<Firing> firing = result.firing().filter(f -> f.program().fits());
    if (firing.isEmpty()) {
      ctx.redirect("/plan?" + result.choices().query());
      return;
    }
    Page.Reading reading =
        answered ? answered(firing.get(), Asked.form(ctx)) : ReadbackDesk.ask(firing.get());
    ctx.html(pages.whole(words.page(result, Optional.of(reading))));
  }

  /** The firing to take along, served; without a program that fits there is nothing to rehearse. */
  private void rehearse(Context ctx, Firing firing) {
    if (!firing.program().fits()) {
      ctx.redirect("/plan?" + firing.choices().query());
      return;
    }
    ctx.html(
        pages.bannered(PocketPage.served(pocket(firing), "/plan?" + firing.choices().query())));
  }

  private void pocketFile(Context ctx) {
    Firing firing = firing(ctx);
    if (!firing.program().fits()) {
      throw new BadRequestResponse(firing.program().refusals().get(0).message());
    }
    ctx.html(PocketPage.file(pocket(firing)))
        .header("Content-Disposition", attachment(firing.card().header().job(), "html"));
  }

  private PocketPage.Content pocket(Firing firing) {
    return PocketPage.Content.of(
        Optional.of(firing.card()),
        firing.program(),
        firing.keypad(),
        firing.slot(),
        slots.register(firing).held(firing.slot()));
  }

  private static void pocketCore(Context ctx) {
    ctx.contentType("text/javascript; charset=utf-8").result(PageScript.core());
  }

  /** A read-back is kept with its slot, by whose role it was. */
  private Page.Reading answered(Firing firing, Map<String, String> typed) {
    ReadbackDesk.Answered answered = ReadbackDesk.answered(firing, typed);
    return Role.ofWord(typed.getOrDefault("role", ""))
        .filter(role -> answered.compared())
        .flatMap(role -> slots.keep(firing, answered, role))
        .map(answered.reading()::with)
        .orElse(answered.reading());
  }

  private void card(Context ctx) {
    Firing firing = firing(ctx);
    PageSize size = "letter".equals(ctx.formParam("paper")) ? PageSize.LETTER : PageSize.A4;
    byte[] pdf = CardPdf.render(firing.card(), size);
    CardEntry entry =
        settings.store().keepCard(firing.card().header().job(), firing.choices().query(), pdf);
    sendPdf(ctx, entry.name(), pdf);
  }

  private void keptCard(Context ctx) {
    byte[] pdf =
        settings
            .store()
            .cardPdf(ctx.pathParam("id"))
            .orElseThrow(() -> new NotFoundResponse("There is no such card on the shelf."));
    sendPdf(ctx, "card", pdf);
  }

  private void calendar(Context ctx) {
    Firing firing = firing(ctx);
    String root = Integer.toHexString(firing.choices().query().hashCode()) + "@heatwright";
    ctx.contentType("text/calendar; charset=utf-8")
        .header("Content-Disposition", attachment(firing.card().header().job(), "ics"))
        .result(
            CalendarFile.write(
                CalendarFile.events(firing.card(), root), settings.clock().instant()));
  }

  private void keep(Context ctx) {
    Firing firing = firing(ctx);
    var schedule = firing.program().expressible();
    settings.store().keep(Kind.SCHEDULE, schedule.name(), ScheduleFile.write(schedule));
    ctx.redirect("/plan?" + firing.choices().query() + "#shelf");
  }

  private void keptSchedule(Context ctx) {
    String id = ctx.pathParam("id");
    var document =
        settings.store().all(Kind.SCHEDULE).stream()
            .filter(d -> d.id().equals(id))
            .findFirst()
            .orElseThrow(() -> new NotFoundResponse("There is no such schedule on the shelf."));
    ctx.contentType("text/plain; charset=utf-8").result(document.text());
  }

  /** A person brings a file of their own. */
  private void shelve(Context ctx) {
    Map<String, String> form = Asked.form(ctx);
    String text = form.getOrDefault("text", "");
    String name = form.getOrDefault("name", "").strip();
    Choices choices = Asked.choices(ctx);
    String kind = form.getOrDefault("kind", "");
    Page.Bringing bringing =
        text.length() > LONGEST_FILE
            ? Page.Bringing.wrong(kind, name, "", "That file is too long.")
            : Shelving.bring(settings.store(), kind, name, text);
    if (bringing.error().isEmpty()) {
      Choices chosen =
          switch (bringing.kind()) {
            case "work" -> choices.withWork(bringing.name());
            case "kiln" -> choices.withKiln(bringing.name());
            default -> choices.withKeypad(bringing.name());
          };
      ctx.redirect("/plan?" + chosen.query() + "#shelf");
      return;
    }
    PlanResult result = planner.plan(choices, ForecastRequest.USUAL_DRAWS);
    ctx.status(422).html(pages.whole(words.page(result, Optional.empty()).with(bringing)));
  }

  /** A schedule from a photograph or PDF of a card, or from its code's text. */
  private void scan(Context ctx) {
    Choices choices = Asked.choices(ctx);
    Optional<UploadedFile> file = Optional.ofNullable(ctx.uploadedFile("picture"));
    String text = Optional.ofNullable(ctx.formParam("code")).orElse("");
    String error = Scanning.keep(settings.store(), file.filter(f -> f.size() > 0), text);
    if (error.isEmpty()) {
      ctx.redirect("/plan?" + choices.query() + "#shelf");
      return;
    }
    PlanResult result = planner.plan(choices, ForecastRequest.USUAL_DRAWS);
    Page page = words.page(result, Optional.empty()).with(new Page.Scan(text, error));
    ctx.status(422).html(pages.whole(page));
  }

  /** A keypad by answering questions; the finished one goes on the shelf. */
  private void describe(Context ctx) {
    DescribeDesk.Told told = answeredSoFar(ctx);
    Optional<Described> described =
        told.interview().described().filter(d -> ctx.formParam("keep") != null);
    if (described.isPresent()) {
      Page.Bringing kept = Shelving.bring(settings.store(), "keypad", "", described.get().yaml());
      if (kept.error().isEmpty()) {
        settings.store().interview().clear();
        ctx.redirect("/plan?" + Choices.of(settings.opening()).withKeypad(kept.name()).query());
        return;
      }
      throw new BadRequestResponse(kept.error());
    }
    ctx.html(pages.describe(DescribeDesk.page(told, words.clock())));
  }

  /** Each answer is kept: who opens the page later goes on where it was left. */
  private DescribeDesk.Told answeredSoFar(Context ctx) {
    AnswerShelf shelf = settings.store().interview();
    if (ctx.method() == HandlerType.GET) {
      return DescribeDesk.resumed(shelf.answers());
    }
    DescribeDesk.Told told =
        DescribeDesk.told(ctx.formParam("afresh") != null ? Map.of() : ctx.formParamMap());
    shelf.replace(told.answers());
    return told;
  }

  // ---- what is known of a kiln

  private void inside(Context ctx, Firing firing) {
    String clock = words.page(planned(firing), Optional.empty()).clock();
    ctx.html(
        pages.inside(
            InsideDesk.page(firing, clock, Asked.query(ctx, "mould"), Asked.query(ctx, "minute"))));
  }

  /** With a plan behind it, or for any pour. */
  private void pour(Context ctx, Optional<Firing> firing) {
    Map<String, String> typed = new LinkedHashMap<>();
    ctx.queryParamMap().forEach((name, values) -> typed.put(name, values.get(0)));
    PlanResult behind =
        firing
            .map(Routes::planned)
            .orElseGet(
                () ->
                    new PlanResult(
                        Choices.of(Map.of()), Map.of(), Optional.empty(), List.of(), firing));
    String clock = words.page(behind, Optional.empty()).clock();
    ctx.html(pages.pour(PourDesk.page(typed, firing, clock)));
  }

  private static PlanResult planned(Firing firing) {
    return new PlanResult(
        firing.choices(), Map.of(), Optional.empty(), List.of(), Optional.of(firing));
  }

  /** The cut mould alone: what the slider asks for. */
  private void section(Context ctx) {
    String svg =
        InsideDesk.section(firing(ctx), Asked.query(ctx, "mould"), Asked.query(ctx, "minute"))
            .orElseThrow(() -> new NotFoundResponse("There are no moulds in this firing."));
    ctx.contentType("image/svg+xml; charset=utf-8").result(svg);
  }

  private void kiln(Context ctx) {
    ctx.html(kilnPage(kilnOnShelf(ctx), Asked.query(ctx, "log"), "", KilnPage.Bringing.nothing()));
  }

  private String kilnPage(String name, String log, String error, KilnPage.Bringing bringing) {
    return pages.kiln(
        desk.page(name, log, error, bringing)
            .orElseThrow(() -> new NotFoundResponse("There is no such kiln on the shelf.")));
  }

  private void bringLog(Context ctx) {
    String name = kilnOnShelf(ctx);
    String address = KilnDesk.address(name);
    Map<String, String> form = Asked.form(ctx);
    longWork.begin(
        ctx,
        "Reading a log for " + name,
        Place.KILNS,
        address,
        piece -> {
          piece.at("The log is read, column by column.");
          KilnDesk.Brought brought = desk.bring(name, form);
          if (brought.log().isPresent()) {
            return LongWork.Answer.at(address + "&log=" + brought.log().get().id() + "#logs");
          }
          int status = brought.bringing().error().isEmpty() ? 200 : 422;
          return LongWork.Answer.page(status, () -> kilnPage(name, "", "", brought.bringing()));
        });
  }

  private void learn(Context ctx) {
    String name = kilnOnShelf(ctx);
    String address = KilnDesk.address(name);
    Set<String> ticked = Set.copyOf(ctx.formParams("use"));
    longWork.begin(
        ctx,
        "Learning from the logs of " + name,
        Place.KILNS,
        address,
        piece -> {
          String error = desk.learn(name, ticked, piece::at);
          return error.isEmpty()
              ? LongWork.Answer.at(address)
              : LongWork.Answer.page(
                  422, () -> kilnPage(name, "", error, KilnPage.Bringing.nothing()));
        });
  }

  private String kilnOnShelf(Context ctx) {
    String name = Asked.query(ctx, "name");
    if (settings.store().find(Kind.KILN, name).isEmpty()) {
      throw new NotFoundResponse("There is no such kiln on the shelf.");
    }
    return name;
  }

  private void plot(Context ctx) {
    String file = ctx.pathParam("plot");
    int dot = Math.max(0, file.lastIndexOf('.'));
    String name = Asked.query(ctx, "name");
    String what = file.substring(0, dot);
    String ending = file.substring(Math.min(file.length(), dot + 1));
    Figure figure =
        desk.figure(name, what, Asked.query(ctx, "log"))
            .filter(f -> ending.equals("svg") || ending.equals("png"))
            .orElseThrow(() -> new NotFoundResponse("There is no such plot."));
    ctx.header("Content-Disposition", attachment(name + " " + what, ending));
    if (ending.equals("svg")) {
      ctx.contentType("image/svg+xml; charset=utf-8").result(Svg.file(figure));
    } else {
      ctx.contentType("image/png").result(Png.of(figure));
    }
  }

  // ---- the slots of a keypad

  private void slots(Context ctx) {
    ctx.html(pages.slots(slots.page(at(ctx), "")));
  }

  private SlotsDesk.At at(Context ctx) {
    try {
      return slots
          .at(Asked.query(ctx, "kiln"), Asked.query(ctx, "keypad"))
          .orElseThrow(() -> new NotFoundResponse("There is no such kiln or keypad on the shelf."));
    } catch (InputException e) {
      throw new BadRequestResponse(Objects.requireNonNull(e.getMessage()));
    }
  }

  private void tellSlots(Context ctx) {
    SlotsDesk.At at = at(ctx);
    String error = slots.tell(at, Asked.form(ctx));
    if (error.isEmpty()) {
      ctx.redirect(SlotsDesk.address(at.kiln(), at.keypad()));
      return;
    }
    ctx.status(422).html(pages.slots(slots.page(at, error)));
  }

  private void keyed(Context ctx) {
    Firing firing = firing(ctx);
    Role by =
        Role.ofWord(Asked.form(ctx).getOrDefault("role", ""))
            .orElseThrow(() -> new BadRequestResponse("Choose who keyed it: a role."));
    if (!firing.program().fits()) {
      throw new BadRequestResponse("This program does not fit the keypad.");
    }
    slots.keyed(firing, by);
    ctx.redirect("/readback?plan=" + firing.choices().sealed());
  }

  private void unknownSlot(Context ctx, boolean answered) {
    SlotsDesk.At at = at(ctx);
    int slot =
        SlotsDesk.slot(at, Asked.query(ctx, "slot"))
            .orElseThrow(() -> new NotFoundResponse("This keypad has no such slot."));
    Map<String, String> typed = answered ? Asked.form(ctx) : Map.of();
    String error = answered ? slots.learn(at, slot, typed) : "";
    if (answered && error.isEmpty()) {
      ctx.redirect(SlotsDesk.address(at.kiln(), at.keypad()) + "#slot" + slot);
      return;
    }
    ctx.status(error.isEmpty() ? 200 : 422)
        .html(pages.unknownSlot(slots.unknown(at, slot, typed, error)));
  }

  private void registerPdf(Context ctx) {
    SlotsDesk.At at = at(ctx);
    PageSize size = "letter".equals(Asked.query(ctx, "paper")) ? PageSize.LETTER : PageSize.A4;
    sendPdf(ctx, "Slots of " + at.kiln(), RegisterPdf.render(slots.sheet(at), size));
  }

  private PlanResult planOf(Context ctx) {
    return planner.plan(Asked.choices(ctx), ForecastRequest.USUAL_DRAWS);
  }

  private Firing firing(Context ctx) {
    return firing(planOf(ctx));
  }

  private static Firing firing(PlanResult result) {
    if (!result.errors().isEmpty()) {
      throw new BadRequestResponse(result.errors().values().iterator().next());
    }
    return result
        .firing()
        .orElseThrow(
            () -> new BadRequestResponse(result.refusal().orElse("There is no plan to take.")));
  }

  private static void sendPdf(Context ctx, String name, byte[] pdf) {
    ctx.contentType("application/pdf")
        .header("Content-Disposition", attachment(name, "pdf"))
        .result(pdf);
  }

  /** A file name of plain letters, so that no header and no file system minds it. */
  private static String attachment(String name, String ending) {
    String plain = name.replaceAll("[^A-Za-z0-9]+", "-").replaceAll("^-|-$", "");
    return "attachment; filename=\"%s.%s\"".formatted(plain.isEmpty() ? "firing" : plain, ending);
  }

  /** What is wrong: a page for whoever looks at pages, else the sentence alone. */
  private void tell(Context ctx, int status, String sentence) {
    ctx.status(status);
    if (Optional.ofNullable(ctx.header("Accept")).orElse("").contains("text/html")
        && status != 403) {
      String head =
          switch (status) {
            case 404 -> "There is nothing here";
            case 400, 409, 422 -> "That did not work";
            default -> "The bench has a trouble";
          };
      ctx.html(
          pages.trouble(
              new TroublePage(
                  words.clock(),
                  Place.near(ctx.path()),
                  head,
                  sentence,
                  Asked.cameFrom(ctx)
                      .filter(from -> !from.equals(Asked.address(ctx)))
                      .orElse(""))));
      return;
    }
    ctx.contentType("text/plain; charset=utf-8").result(sentence.getBytes(StandardCharsets.UTF_8));
  }
}
