package org.heatwright.app.web;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.describe.Owner;
import org.heatwright.app.files.KeypadFile;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.MovingClock;
import org.heatwright.app.store.Document;
import org.heatwright.app.store.Kind;
import org.heatwright.app.store.Store;

/** Walks the demo studio's bench through every place and keeps what it answers. */
final class Walk implements AutoCloseable {

  private static final Instant AFTERNOON = Instant.parse("2026-12-02T15:00:00Z");

  /**
   * An answer of the bench.
   *
   * @param address with the method before it
   * @param leadsTo is the address of what to ask for in its place
   */
  record Answer(String address, String type, String body, Optional<String> leadsTo) {}

  final Map<String, Answer> answers = new LinkedHashMap<>();
  private final MovingClock clock = new MovingClock(AFTERNOON, ZoneId.of("Europe/Lisbon"));
  private final Store store = Store.temporary(clock);
  private final Bench bench;
  private final HttpClient client = HttpClient.newHttpClient();
  private final String language;

  /**
   * @param language as a browser asks for it
   */
  Walk(String language) {
    this.language = language;
    DemoStudio.fill(store);
    bench = Bench.start(new BenchSettings(store, clock, OptionalInt.of(0), DemoStudio.OPENING));
  }

  @Override
  public void close() {
    bench.close();
    store.close();
  }

  void everything() throws Exception {
    places();
    plans();
    casting();
    slotsAndReadBack();
    firings();
    kilnsAndLogs();
    keypads();
    wrong();
    firstRun();
    timerAndCauses();
  }

  /** The first run, for every kind of work. */
  private void firstRun() throws Exception {
    Map<String, String> kiln = new LinkedHashMap<>();
    kiln.put("kiln-name", "Dock");
    kiln.put("kiln-power", "2600");
    kiln.put("kiln-volts", "230");
    kiln.put("kiln-width", "22");
    kiln.put("kiln-depth", "26");
    kiln.put("kiln-height", "21");
    kiln.put("kiln-top", "1100");
    kiln.put("kiln-door", "front");
    kiln.put("kiln-wall", "brick");
    for (String what : List.of("enamel", "burnout", "sinter", "glass", "heat-treat")) {
      get("start");
      get("start?step=what");
      post("start?step=what", Map.of("what", what));
      get("start?step=kiln");
      post("start?step=kiln", Map.of("kiln-power", "much", "kiln-top", "9"));
      post("start?step=kiln", kiln);
      get("start?step=keypad");
      post("start?step=keypad", Map.of());
      post("start?step=keypad", Map.of("pad", "later"));
      get("start?step=work");
      post("start?step=work", Map.of("work-name", "", "work-sheet", "thin"));
    }
    post("start?step=work", Map.of("work-name", "Dock", "zone", "Europe/Lisbon"));
    get("");
    get("shelf");
    Answer shelf = get("shelf");
    String id =
        found(
            shelf.body(),
            "name=\"what\" value=\"[a-z]+\"><button[^>]*name=\"id\" value=\"([^\"]+)\"");
    post("shelf/away", Map.of("what", "kiln", "id", id));
    get("shelf");
    post("shelf/back", Map.of("id", id));
    get("shelf");
    post("start/afresh", Map.of());
    get("offline");
  }

  /** The piece timer at several heats, and what may be behind every fault there is. */
  private void timerAndCauses() throws Exception {
    get("plan?work=Evening+enamel&kiln=Buoy&keypad=Tern");
    String evening = "timer?plan=" + sealed("work=Evening+enamel&kiln=Buoy&keypad=Tern");
    for (String heat : List.of("", "&heat=700", "&heat=760", "&heat=840+°C", "&heat=hot")) {
      get(evening + heat.replace("°", "%C2%B0"));
    }
    get("ask");
    for (String fault : faults(get("ask").body())) {
      get("ask?came=" + fault);
    }
    get("ask?came=heat-treat/coarse-grain&now=21&meant=F&top=572&high=570");
    get("ask?came=kiln/stays-cold&c.clicks=yes");
    get("ask?want=card");
    get("ask?want=card&work=Copper+leaves+1&kiln=Buoy&keypad=Tern");
    get("ask?want=card&work=Harbour+burnout&kiln=Buoy&keypad=Tern");
    get("ask?came=glass/nonsense&high=hot&top=99999&hold=3&firing=none&kiln=None");
  }

  private static List<String> faults(String page) {
    return Pattern.compile("<option value=\"([a-z-]+/[a-z-]+)\"")
        .matcher(page)
        .results()
        .map(m -> m.group(1))
        .toList();
  }

  private static String sealed(String query) {
    Map<String, String> fields = new LinkedHashMap<>();
    for (String field : query.split("&", -1)) {
      fields.put(field.split("=", -1)[0], field.split("=", -1)[1].replace('+', ' '));
    }
    return Choices.of(fields).sealed();
  }

  /** What people have named on this bench. */
  Set<String> names() {
    return store.names();
  }

  URI address() {
    return bench.address();
  }

  void places() throws Exception {
    for (String path :
        List.of("", "plan", "kilns", "firings", "materials", "materials?unit=F", "help")) {
      get(path);
    }
    get("materials?q=silver");
    get("materials?q=nothing+such");
    ownValues();
    get("firings?kiln=Anchor");
    get("firings?kiln=Buoy");
  }

  /** Every work once, every keypad with every kiln. */
  private void rehearsals(List<Document> keypads, List<Document> kilns) throws Exception {
    int turn = 0;
    for (var work : store.all(Kind.WORK)) {
      String kiln = kilns.get(turn % kilns.size()).name();
      String keypad = keypads.get(turn / kilns.size() % keypads.size()).name();
      get(
          "rehearse?work=%s&kiln=%s&keypad=%s"
              .formatted(AskedBench.encoded(work.name()), kiln, keypad));
      turn++;
    }
  }

  private void ownValues() throws Exception {
    for (String of : List.of("enamel", "glass", "investment", "alloy", "clay", "metal")) {
      get("materials/own?unit=F&of=" + of);
      post("materials/own", Map.of("of", of, "softening-celsius", "9", "anneal-soak", "x"));
    }
    get("materials/own?name=Shop+powder");
    post("materials/own", Map.of("of", "clay", "data-sheet.top-hold", "90", "name", "Shop clear"));
    get("materials?kept=Shop+clear");
    post("materials/into", Map.of("values", "Shop clear", "work", "Harbour burnout"));
    post("materials/into", Map.of("values", "Nothing", "work", "Harbour burnout"));
    post("materials/into", Map.of("values", "Shop powder", "work", "Harbour burnout"));
    get("materials?put=Shop+powder&into=Harbour+burnout");
    post("materials/back", Map.of("work", "Harbour burnout"));
    get("materials?back=Harbour+burnout");
  }

  void plans() throws Exception {
    var keypads = store.all(Kind.KEYPAD);
    int next = 0;
    var kilns = store.all(Kind.KILN);
    for (var work : store.all(Kind.WORK)) {
      for (int turn = 0; turn < 2; turn++) {
        String kiln = kilns.get(next % kilns.size()).name();
        String keypad = keypads.get(next % keypads.size()).name();
        plan(Map.of("work", work.name(), "kiln", kiln, "keypad", keypad));
        next++;
      }
    }
    String burnout = "work=Harbour+burnout&kiln=Capstan&keypad=Tern&slot=3";
    Answer whole = get("plan?" + burnout);
    get("plan?" + burnout + "&by=start");
    get("plan?work=Silver+cloisonne&kiln=Buoy&keypad=Tern");
    get("plan?work=Glass+disc&kiln=Anchor&keypad=Gull");
    String sealed = found(whole.body(), "href=\"/inside\\?plan=([A-Za-z0-9_-]+)\"");
    get("inside?plan=" + sealed);
    get("inside?plan=" + sealed + "&minute=200");
    get("inside/section?plan=" + sealed + "&minute=100");
    get("pour?plan=" + sealed);
    get("rehearse?plan=" + sealed);
    rehearsals(keypads, kilns);
    get("rehearse?work=Mixed+moulds&kiln=Capstan&keypad=Dunlin");
    get("pocket.html?plan=" + sealed);
    Answer mixed = get("plan?work=Mixed+moulds&kiln=Capstan&keypad=Heron");
    get("inside?plan=" + found(mixed.body(), "href=\"/inside\\?plan=([A-Za-z0-9_-]+)\""));
    Answer glass = get("plan?work=Glass+bowl&kiln=Capstan&keypad=Petrel");
    get("rehearse?plan=" + found(glass.body(), "href=\"/rehearse\\?plan=([A-Za-z0-9_-]+)"));
    plan(Map.of("work", "Harbour burnout", "kiln", "Capstan", "target1", "9999"));
    plan(Map.of("work", "Harbour burnout", "kiln", "Capstan", "hold1", "long", "rate1", "quick"));
    plan(Map.of("work", "Harbour burnout", "kiln", "Capstan", "slot", "99"));
    plan(Map.of("work", "Nothing", "kiln", "Nowhere", "keypad", "None", "at", "soon"));
    plan(Map.of("work", "Harbour burnout", "kiln", "Capstan", "at", "2026-12-02T16:00"));
  }

  private void casting() throws Exception {
    for (String query :
        List.of(
            "",
            "what=temperatures",
            "what=temperatures&asked=1&alloy=sterling-925&thinnest-mm=1.2&method=vacuum",
            "what=temperatures&asked=1&alloy=gold-18k-yellow",
            "what=temperatures&asked=1&alloy=bronze-90-10&unit=F",
            "what=temperatures&asked=1&alloy=platinum-950",
            "what=temperatures&asked=1&alloy=nonsense",
            "what=metal",
            "what=metal&asked=1&alloy=sterling-925&wax-g=5&method=vacuum",
            "what=metal&asked=1&alloy=sterling-925&wax-g=many",
            "what=powder",
            "what=powder&asked=1&diameter-mm1=75&height-mm1=100&wax-g1=20&water-powder=0.4",
            "what=powder&asked=1&diameter-mm1=75&height-mm1=100&wax-g1=20&investment=gypsum",
            "what=size",
            "what=size&asked=1&wanted-mm=18,2",
            "what=size&asked=1&wanted-mm=18,2&alloy=sterling-925&investment=gypsum",
            "what=order",
            "what=order&asked=1&mould1=lace&wants1=630&count1=3&mould2=signet&wants2=450",
            "what=nonsense")) {
      get("pour?" + query);
    }
  }

  private void slotsAndReadBack() throws Exception {
    String tern = "kiln=Capstan&keypad=Tern";
    get("slots");
    get("slots?" + tern);
    get("slots/read?" + tern + "&slot=2");
    post("slots/read?" + tern + "&slot=2", Map.of("shown1", "70", "role", "maker"));
    Firing firing =
        new FiringPlanner(store, clock)
            .plan(Choices.of(DemoStudio.OPENING), 8)
            .firing()
            .orElseThrow();
    String sealed = firing.choices().sealed();
    get("readback?plan=" + sealed);
    Map<String, String> right = new LinkedHashMap<>(Readings.right(firing));
    post("readback?plan=" + sealed, right);
    Map<String, String> wrong = new LinkedHashMap<>(right);
    wrong.put("shown2", "999");
    wrong.remove("overnight");
    wrong.remove("cold-display");
    post("readback?plan=" + sealed, wrong);
    post("readback?plan=" + sealed, Map.of("shown-slot", "5", "shown1", "x", "role", "maker"));
    post("readback?plan=" + sealed, right);
    get("slots?" + tern);
    get("plan?" + firing.choices().query());
    for (String event :
        List.of("power-cut", "fired-by-other", "unit-switched", "reset", "edited", "ran")) {
      post("slots/tell?" + tern, Map.of("event", event, "role", "maker", "slot", "3"));
    }
    post(
        "slots/tell?" + tern,
        Map.of(
            "event", "needed", "role", "teacher", "slot", "3", "what", "x", "until", "2026-12-20"));
    get("slots?" + tern);
    plan(Map.of("work", "Evening enamel", "kiln", "Capstan", "keypad", "Tern", "slot", "3"));
    post("slots/tell?" + tern, Map.of("event", "released", "role", "teacher", "slot", "3"));
    post("slots/keyed?plan=" + sealed, Map.of("role", "maker"));
    post(
        "slots/tell?" + tern,
        Map.of("event", "rules", "role", "technician", "days", "10", "keeps", "on"));
    get("slots?" + tern);
    post("slots/tell?" + tern, Map.of("event", "rules", "role", "technician", "days", "x"));
    post("slots/tell?" + tern, Map.of("event", "needed", "role", "maker", "slot", "3"));
    post("slots/tell?" + tern, Map.of("event", "needed", "role", "", "slot", "3", "what", "y"));
  }

  private void firings() throws Exception {
    FiringBook book = new FiringBook(store, clock);
    for (String what :
        List.of(
            "work=Harbour+burnout&kiln=Capstan&keypad=Gull&slot=3&by=start",
            "work=Glass+disc&kiln=Anchor&keypad=Gull&slot=2&by=start",
            "work=Silver+class&kiln=Buoy&keypad=Heron&slot=1&by=start")) {
      post("firings?" + what, Map.of());
      FiringRecord planned =
          book.all().stream()
              .filter(f -> f.state() == FiringRecord.State.PLANNED)
              .findFirst()
              .orElseThrow();
      String id = "?id=" + planned.id();
      get("");
      get("firing" + id);
      post("firing/pressed" + id, Map.of());
      get("");
      clock.move(Duration.ofMinutes(20));
      post("firing/shown" + id, Map.of("shows", "24"));
      get("");
      clock.move(Duration.ofMinutes(90));
      get("");
      post("firing/shown" + id, Map.of("shows", "900"));
      get("");
      post("firing/shown" + id, Map.of("shows", "hot"));
      post("firing/shown" + id, Map.of("shows", "6120"));
      post("firing/shown" + id, Map.of("shows", "20", "time", "1405"));
      post("firing/shown" + id, Map.of("shows", "20", "time", "04:05", "from", "firing"));
      post("firing/note" + id, Map.of("note", " "));
      post("firing/note" + id, Map.of("note", "x"));
      post("firing/result" + id, Map.of("outcome", "splendid"));
      for (int hours : List.of(2, 4, 6, 8, 10)) {
        clock.move(Duration.ofHours(hours));
        get("");
      }
      get("firing" + id);
      post("firing/out" + id, Map.of("why", ""));
      post("firing/result" + id, Map.of("outcome", "good", "note", "x"));
      get("");
      Answer page = get("firing" + id);
      String line = found(page.body(), "name=\"line\" value=\"([^\"]+)\"");
      post("firing/back" + id, Map.of("line", line));
      get("firing" + id + "&back=" + line);
      post("firing/away" + id, Map.of());
      get("firing" + id);
      post("firing/away" + id, Map.of("again", "1"));
    }
    get("firings");
    get("kilns");
  }

  private void kilnsAndLogs() throws Exception {
    for (String kiln : List.of("Anchor", "Buoy", "Capstan")) {
      settled("kiln?name=" + kiln);
    }
    for (var log : store.logs("Anchor")) {
      settled("kiln?name=Anchor&log=" + log.id());
    }
    String evening = store.logs("Buoy").get(0).id();
    String two =
        "heatwork?a=log:%s&b=log:%s"
            .formatted(store.logs("Anchor").get(0).id(), store.logs("Anchor").get(1).id());
    get("heatwork");
    get(two + "&activation=185&kiln=Anchor&unit=F");
    get(two + "&activation=185");
    get(two + "&activation=lots&at=5");
    get("heatwork?a=x&b=y&activation=185");
    get("pieces");
    get("pieces?kiln=Buoy&log=" + evening);
    get("pieces?unit=F&kiln=Buoy&log=" + evening);
    get("pieces?kiln=Buoy&log=" + evening + "&work=Evening+enamel&openings=two");
    get("pieces?kiln=Anchor&log=" + store.logs("Anchor").get(0).id());
    post("pieces", Map.of("kiln", "Buoy", "log", evening, "work", "Evening enamel"));
    get("pieces");
    get("pieces?unit=F");
    settled("kiln?name=Buoy&log=" + evening);
    String ids = store.logs("Anchor").get(1).id();
    post("kiln/learn?name=Anchor", Map.of("use", ids));
    settled("kiln?name=Anchor");
    post("kiln/learn?name=Anchor", Map.of());
    post("kiln/log?name=Anchor", Map.of("csv", "", "logname", ""));
    post(
        "kiln/log?name=Anchor",
        Map.of(
            "csv", foreign(), "logname", "x", "chosen", "log:" + store.logs("Anchor").get(0).id()));
    post(
        "kiln/log?name=Anchor", Map.of("csv", "a;b\nc;d\n", "logname", "x", "schedule", "name: x"));
    get("kiln/power.svg?name=Anchor");
    get("kiln?name=Nobody");
  }

  /** Semicolons, decimal commas, °F, two-digit years, and a gap of an hour. */
  private static String foreign() {
    StringBuilder rows = new StringBuilder("Date;Time;Kiln °F;Duty\n");
    for (int minute = 0; minute < 240; minute += 2) {
      if (minute < 100 || minute >= 160) {
        rows.append(
            String.format(
                    Locale.ROOT,
                    "%02d.11.26;%02d:%02d;%.1f;%d%n",
                    20,
                    8 + minute / 60,
                    minute % 60,
                    68 + 4.5 * minute,
                    55)
                .replace('.', ',')
                .replaceFirst(",11,26", ".11.26"));
      }
    }
    return rows.toString();
  }

  private void keypads() throws Exception {
    Pattern hidden = Pattern.compile("name=\"(a-[a-z0-9-]+)\" value=\"([^\"]*)\"");
    Pattern asked = Pattern.compile("name=\"id\" value=\"([a-z0-9-]+)\"");
    Set<String> seen = new HashSet<>();
    for (var entry : store.all(Kind.KEYPAD)) {
      Map<String, String> knows = Owner.answers(KeypadFile.read(entry.text(), "k"));
      get("keypad/new"); // goes on with the keypad before, as it was kept
      Answer page = post("keypad/new", Map.of("afresh", "1"));
      for (int i = 0; i < 80; i++) {
        Matcher id = asked.matcher(page.body());
        if (!id.find()) {
          break;
        }
        Map<String, String> form = new LinkedHashMap<>();
        Matcher fields = hidden.matcher(page.body());
        while (fields.find()) {
          form.put(fields.group(1), fields.group(2).replace("&#39;", "'").replace("&#34;", "\""));
          form.replaceAll((k, v) -> v.replace("&quot;", "\"").replace("&amp;", "&"));
        }
        form.put("id", id.group(1));
        if (seen.add(id.group(1))) {
          form.put("answer", "<what>");
          post("keypad/new", form);
        }
        form.put("answer", knows.get(id.group(1)));
        page = post("keypad/new", form);
      }
    }
  }

  private void wrong() throws Exception {
    post("shelf?work=Harbour+burnout", Map.of("kind", "kiln", "name", "", "text", ""));
    post("shelf?work=Harbour+burnout", Map.of("kind", "work", "name", "x", "text", "kind: burnt"));
    post("shelf?work=Harbour+burnout", Map.of("kind", "keypad", "name", "x", "text", "keys: [a"));
    get("firing?id=nothing");
    get("cards/none");
    get("schedules/none");
    get("inside?work=Nothing");
    get("nowhere");
    get("language/xx");
  }

  Answer plan(Map<String, String> fields) throws Exception {
    String body =
        "{\"draws\":1,\"fields\":{"
            + fields.entrySet().stream()
                .map(e -> "\"" + e.getKey() + "\":\"" + e.getValue() + "\"")
                .collect(Collectors.joining(","))
            + "}}";
    return send(
        "POST plan " + fields,
        HttpRequest.newBuilder(at("plan"))
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  /** A page once nothing of it is still being worked out. */
  private Answer settled(String path) throws Exception {
    Answer answer = get(path);
    for (int tries = 0; tries < 100 && answer.body().contains("data-later"); tries++) {
      Thread.sleep(300);
      answer = get(path);
    }
    return answer;
  }

  /** A page; one that is still being worked out is waited for. */
  Answer get(String path) throws Exception {
    Answer answer = look(path);
    Optional<String> going = AskedBench.going(answer.leadsTo());
    for (int tries = 0; tries < 600 && going.isPresent(); tries++) {
      if (look(going.get()).leadsTo().isPresent()) {
        answer = look(path);
        going = AskedBench.going(answer.leadsTo());
      }
    }
    return answer;
  }

  private Answer look(String path) throws Exception {
    return send("GET " + path, HttpRequest.newBuilder(at(path)));
  }

  Answer post(String path, Map<String, String> form) throws Exception {
    String body = AskedBench.form(form);
    return send(
        "POST " + path + " " + form.keySet(),
        HttpRequest.newBuilder(at(path))
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  private URI at(String path) {
    return bench.address().resolve(path);
  }

  private Answer send(String address, HttpRequest.Builder request) throws Exception {
    HttpResponse<String> response =
        client.send(
            request.header("Accept-Language", language).build(),
            HttpResponse.BodyHandlers.ofString());
    Answer answer =
        new Answer(
            address,
            response.headers().firstValue("Content-Type").orElse(""),
            response.body(),
            response.headers().firstValue("Location"));
    if (response.statusCode() >= 300 && response.statusCode() < 400) {
      return answer;
    }
    answers.put(answers.size() + " " + response.statusCode() + " " + address, answer);
    return answer;
  }

  private static String found(String text, String pattern) {
    Matcher matcher = Pattern.compile(pattern).matcher(text);
    return matcher.find() ? matcher.group(1) : "";
  }
}
