package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.firings.FiringBook;
import org.heatwright.app.firings.FiringRecord;
import org.heatwright.app.firings.Happening;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** The bench on a phone beside the kiln: one hand, a knuckle, and a network that drops. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class PhoneIT {

  private static final String BURNOUT =
      "work=Harbour+burnout&kiln=Capstan&keypad=Gull&slot=3&by=start";
  private static final String EVENING =
      "work=Evening+enamel&kiln=Anchor&keypad=Gull&slot=3&by=start";

  /** A target for a thumb, CSS px. */
  private static final int THUMB = 44;

  @TempDir static Path folder;
  private static Clock clock;
  private static String address;
  private static Store store;
  private static Bench bench;
  private static Browser browser;

  @BeforeAll
  static void open() {
    // The browser's clock is the machine's, and pieces are told by it.
    clock = Clock.system(ZoneId.of("Europe/Lisbon"));
    store = Store.temporary(clock);
    DemoStudio.fill(store);
    bench = Bench.start(new BenchSettings(store, clock, OptionalInt.of(0), DemoStudio.OPENING));
    address = bench.address().toString();
    browser = new Browser(folder);
    browser.chrome.executeCdpCommand(
        "Page.addScriptToEvaluateOnNewDocument",
        Map.of(
            "source",
            "window.awake = 0; window.heard = []; window.felt = [];"
                + " if (navigator.wakeLock) { const ask = navigator.wakeLock.request"
                + ".bind(navigator.wakeLock); navigator.wakeLock.request = (w) => { window.awake++;"
                + " return ask(w); }; }"
                + " navigator.vibrate = (p) => { window.felt.push(p); return true; };"
                + " const start = OscillatorNode.prototype.start; OscillatorNode.prototype.start ="
                + " function (t) { window.heard.push(this.frequency.value); return"
                + " start.call(this, t); };"));
  }

  @AfterAll
  static void close() {
    browser.close();
    bench.close();
    store.close();
  }

  @BeforeEach
  void start() {
    browser.size(360, 640);
    browser.scheme("light");
    browser
        .complaints(); // of the test before: a browser complains of each answer that did not come
  }

  // ---- the piece timer

  @Test
  @Order(1)
  void aPieceIsTimedWithOneKnuckleHeardFeltAndKept() throws Exception {
    go("plan?" + EVENING);
    browser.find("#taking .pressing button[name=pressed]").click();
    browser.until("what is hot", () -> browser.maybe(".hot:not([data-later])").isPresent());
    browser.driver.findElement(By.linkText("Piece timer")).click();
    browser.until("the timer", () -> browser.maybe("#door").isPresent());
    assertThat(browser.text("#count")).isEqualTo("0 / 6");
    // The one press that matters lies whole in view above the places, and a knuckle finds it.
    browser.script("window.scrollTo(0, 0)");
    Map<?, ?> box =
        (Map<?, ?>)
            browser.script("return document.getElementById('door').getBoundingClientRect()");
    Number places =
        (Number)
            browser.script("return document.querySelector('.places').getBoundingClientRect().top");
    assertThat(((Number) box.get("bottom")).doubleValue()).isLessThan(places.doubleValue());
    assertThat(((Number) box.get("height")).doubleValue()).isGreaterThan(120);
    assertThat(((Number) box.get("width")).doubleValue()).isGreaterThan(280);
    usable("60-timer-idle", "#door");

    browser.size(360, 640);
    // A knuckle that slips within the second is one press.
    browser.script("door.click(); door.click()");
    browser.until("it counts", () -> !browser.text("#seconds").equals("0"));
    assertThat(browser.text("#door")).isEqualTo("Piece is out");
    assertThat(browser.text("#stage")).isEqualTo("Leave it in");
    assertThat(browser.text("#ought")).matches("should be \\d+ to \\d+ °C now");
    assertThat(browser.text("#coming-stage")).startsWith("Look in ");
    assertThat(awake()).isPositive();
    browser.picture("61-timer-in-phone");

    // Shut some time ago, as a reload finds it: the count goes on, at the first look it sounds.
    long look = stage("look");
    shutAgo(look - 3);
    assertThat(Integer.parseInt(browser.text("#seconds"))).isBetween((int) look - 3, (int) look);
    browser.find("#sound").click(); // off, and on again: sound needs a press after a reload
    browser.find("#sound").click();
    browser.script("window.heard = []; window.felt = []");
    browser.until("the look", () -> browser.text("#stage").equals("Look now"));
    assertThat((List<?>) browser.script("return window.heard")).hasSize(2);
    assertThat((List<?>) browser.script("return window.felt")).hasSize(1);
    browser.script("window.scrollTo(0, 0)");
    browser.view("62-timer-look-phone");
    usable("62-timer-look", "#door");

    browser.size(360, 640);
    shutAgo(stage("over") + 2);
    assertThat(browser.text("#stage")).isEqualTo("Too long");
    usable("63-timer-over", "#door");

    // Sound off is remembered; colour, words and vibration stay.
    browser.size(360, 640);
    browser.find("#sound").click();
    shutAgo(look - 2);
    assertThat(browser.find("#sound").getAttribute("aria-checked")).isEqualTo("false");
    browser.script("window.heard = []; window.felt = []");
    browser.until("the look", () -> browser.text("#stage").equals("Look now"));
    assertThat((List<?>) browser.script("return window.heard")).isEmpty();
    assertThat((List<?>) browser.script("return window.felt")).hasSize(1);
    browser.find("#sound").click();

    browser.find("#door").sendKeys(Keys.SPACE); // the keyboard's way
    browser.until("one piece", () -> browser.all("#pieces li").size() == 1);
    browser.until("it is in the book", () -> pieces().size() == 1);
    int seconds = Integer.parseInt(pieces().get(0));
    assertThat((long) seconds).isBetween(look - 2, look + 8);
    assertThat(browser.text("#count")).isEqualTo("1 / 6");
    browser.find("#pieces button").click();
    browser.until("it is out of the book", () -> pieces().isEmpty());
    assertThat(browser.text("#count")).isEqualTo("0 / 6");
    browser.find("#pieces button").click();
    browser.until("it is in the book again", () -> pieces().size() == 1);
    assertThat(browser.complaints()).isEmpty();
  }

  // ---- the network drops

  @Test
  @Order(2)
  void whatIsNeededAtTheKilnStaysWhenTheBenchIsGone() throws Exception {
    go("");
    browser.until("the worker", PhoneIT::controlled);
    go("plan?" + BURNOUT);
    String plan = browser.driver.getCurrentUrl();
    String readback = browser.find("#keying a.button[href^='/readback']").getAttribute("href");
    String beside = readback.replace("/readback?", "/rehearse?");
    String sheet = beside + "#keyin";
    String timer = address + "timer?firing=" + running().id();
    browser.until(
        "the sheet is kept ahead", () -> kept().contains(beside)); // it is worked out first
    browser.driver.get(timer);
    browser.until("the timer is kept", () -> kept().contains(timer));
    browser.driver.get(readback);
    browser.until("the read-back is kept", () -> kept().contains(readback));
    assertThat(kept()).noneMatch(address -> address.contains("/health"));
    assertThat(browser.complaints()).isEmpty();

    int before = pieces().size();
    int port = bench.address().getPort();
    bench.close();
    try {
      // Read back, typed blind, compared by the same core without the bench.
      browser.driver.get(readback);
      browser.until("as of", () -> browser.text(".as-of").contains("the bench does not answer"));
      assertThat(browser.text(".as-of")).matches("As of \\d\\d:\\d\\d: .*");
      assertThat(browser.all(".ask input").size()).isGreaterThan(5);
      browser.type("#shown-slot", "3");
      browser.type("#shown1", "77");
      browser.picture("64-offline-readback-phone");
      browser.driver.navigate().refresh();
      browser.until(
          "typed is kept", () -> browser.find("#shown1").getAttribute("value").equals("77"));
      browser.find(".reading .go button").click();
      browser.until("the page beside", () -> browser.driver.getCurrentUrl().contains("/rehearse?"));
      browser.until("the fields", () -> browser.maybe("#readback #shown1").isPresent());
      assertThat(browser.find("#readback #shown1").getAttribute("value")).isEqualTo("77");
      browser.find("#readback form button.main").click();
      browser.until("the verdict", () -> browser.find("#readback .verdict").isDisplayed());

      // The keying sheet goes on where it was.
      browser.driver.get(sheet);
      browser.until("the sheet", () -> browser.maybe("#step-count").isPresent());
      browser.driver.findElement(By.xpath("//button[.='Done, next']")).click();
      browser.driver.navigate().refresh();
      browser.until("step 2", () -> browser.text("#step-count").startsWith("Step 2 of"));
      browser.picture("65-offline-sheet-phone");

      // Now and the plan as they were, with the time.
      go("");
      assertThat(browser.text(".as-of")).contains("As of ");
      assertThat(browser.text("h1")).isEqualTo("One kiln is hot.");
      browser.picture("66-offline-now-phone");
      browser.driver.get(plan);
      assertThat(browser.text(".as-of")).contains("As of ");

      // A piece that is timed now waits on the phone.
      browser.driver.get(timer);
      browser.until("the timer", () -> browser.maybe("#door").isPresent());
      browser.find("#door").click();
      Thread.sleep(1400); // longer than a slip
      browser.find("#door").click();
      browser.until("waits", () -> browser.text("#pieces").contains("waits to be sent"));
      assertThat(browser.violations()).isEmpty();

      // What was not kept says so and leads to what was; what is sent is not lost without a word.
      go("materials");
      assertThat(browser.text("h1")).isEqualTo("The bench does not answer.");
      browser.until("the list", () -> browser.text("#kept-pages").contains("Read it back"));
      browser.picture("67-offline-other-phone");
      assertThat(browser.violations()).isEmpty();
      comeAndGo(port);
      browser.until("materials", () -> browser.text("h1").startsWith("Materials"));
      go("");
      browser.type(".hot input[name=shows]", "612");
      browser.find(".hot .shows button").click();
      browser.until("not sent", () -> browser.text(".as-of").contains("was not taken"));
    } finally {
      bench =
          Bench.start(new BenchSettings(store, clock, OptionalInt.of(port), DemoStudio.OPENING));
    }
    // What could not be sent stands in its field again, once the bench is back.
    browser.until("it is back", () -> browser.text(".as-of").contains("go back and send it"));
    browser.find(".as-of a").click();
    browser.until(
        "the reading",
        () ->
            browser
                .maybe(".hot input[name=shows]")
                .filter(field -> "612".equals(field.getAttribute("value")))
                .isPresent());
    assertThat(pieces()).hasSize(before);
    browser.driver.get(timer);
    browser.until("the piece was sent", () -> pieces().size() == before + 1);
    browser.until("nothing waits", () -> !browser.text("#pieces").contains("waits to be sent"));
    assertThat(browser.maybe(".as-of")).isEmpty();
  }

  /** The bench answers for as long as a page that waits for it needs to notice. */
  private static void comeAndGo(int port) throws InterruptedException {
    Bench again =
        Bench.start(new BenchSettings(store, clock, OptionalInt.of(port), DemoStudio.OPENING));
    Thread.sleep(12_000);
    again.close();
  }

  // ---- one hand

  @Test
  @Order(3)
  void sheetAndReadBackAreForAThumb() throws Exception {
    go("plan?" + BURNOUT);
    String readback = browser.find("#keying a.button[href^='/readback']").getAttribute("href");
    browser.driver.get(readback.replace("/readback?", "/rehearse?") + "#keyin");
    browser.until("the sheet", () -> browser.maybe("#step-count").isPresent());
    WebElement next = browser.driver.findElement(By.xpath("//button[.='Done, next']"));
    Map<?, ?> box = (Map<?, ?>) browser.script("return arguments[0].getBoundingClientRect()", next);
    // In the lower half, where a thumb is, whole in view without scrolling.
    assertThat(((Number) box.get("top")).doubleValue()).isGreaterThan(320);
    assertThat(((Number) box.get("bottom")).doubleValue()).isLessThanOrEqualTo(640);
    double before = ((Number) box.get("top")).doubleValue();
    next.click();
    Map<?, ?> after =
        (Map<?, ?>) browser.script("return arguments[0].getBoundingClientRect()", next);
    assertThat(((Number) after.get("top")).doubleValue())
        .as("it stays under the thumb from step to step")
        .isEqualTo(before);
    assertThat(small()).as("targets below %d px", THUMB).isEmpty();
    assertThat(awake()).isPositive();
    browser.view("68-sheet-phone");
    browser.driver.get(readback);
    assertThat(small()).as("targets below %d px", THUMB).isEmpty();
    assertThat(awake()).isPositive();
    for (WebElement field : browser.all(".ask input")) {
      assertThat(field.getAttribute("autocomplete")).isEqualTo("off");
      assertThat(field.getAttribute("inputmode")).isIn("decimal", "text");
    }
    assertThat(browser.find("#shown-slot").getAttribute("inputmode")).isEqualTo("decimal");
    browser.view("69-readback-phone");
  }

  @Test
  @Order(4)
  void theBenchCanBeInstalled() throws Exception {
    go("");
    Map<String, Object> told = browser.chrome.executeCdpCommand("Page.getAppManifest", Map.of());
    assertThat((List<?>) told.get("errors")).isEmpty();
    assertThat((String) told.get("url")).endsWith("/manifest.webmanifest");
    Map<String, Object> wrong =
        browser.chrome.executeCdpCommand("Page.getInstallabilityErrors", Map.of());
    assertThat((List<?>) wrong.get("installabilityErrors")).isEmpty();
    // Every style and script of a page that is kept is kept with it.
    String readback = "";
    for (String page : List.of("", "plan?" + BURNOUT, "timer?" + EVENING)) {
      go(page);
      assertThat(PhoneRoutes.SHELL).containsAll(parts());
      if (page.startsWith("plan")) {
        readback = browser.find("#keying a.button[href^='/readback']").getAttribute("href");
      }
    }
    for (String page : List.of(readback, readback.replace("/readback?", "/rehearse?"))) {
      browser.driver.get(page);
      assertThat(PhoneRoutes.SHELL).containsAll(parts());
    }
    assertThat(browser.complaints()).isEmpty();
  }

  // ---- helpers

  private static void go(String page) {
    browser.driver.get(address + page);
  }

  @SuppressWarnings("unchecked")
  private static List<String> parts() {
    return (List<String>)
        browser.script(
            "return [...new Set(performance.getEntriesByType('resource').map((e) => new"
                + " URL(e.name).pathname))].filter((p) => /\\.(js|css)$/.test(p) && p !=="
                + " '/worker.js')");
  }

  private static boolean controlled() {
    return Boolean.TRUE.equals(
        browser.script("return Boolean(navigator.serviceWorker.controller)"));
  }

  @SuppressWarnings("unchecked")
  private static List<String> kept() {
    return (List<String>)
        browser.chrome.executeAsyncScript(
            "const done = arguments[arguments.length - 1]; (async () => { const all = []; for (const"
                + " name of await caches.keys()) if (name.startsWith('heatwright-pages-')) for"
                + " (const r of await (await caches.open(name)).keys()) all.push(r.url);"
                + " done(all); })()");
  }

  private static long awake() {
    browser.until(
        "it stays awake", () -> ((Number) browser.script("return window.awake")).longValue() > 0);
    return ((Number) browser.script("return window.awake")).longValue();
  }

  /** When a stage begins, s. */
  private static long stage(String look) {
    return ((Number)
            browser.script(
                "return JSON.parse(document.getElementById('timer-data').textContent).stages.find((s)"
                    + " => s.look === arguments[0]).fromSeconds",
                look))
        .longValue();
  }

  /** As if the door had been shut so long ago, s. */
  private static void shutAgo(long seconds) {
    browser.script(
        "const key = 'heatwright timer ' +"
            + " JSON.parse(document.getElementById('timer-data').textContent).key; const kept ="
            + " JSON.parse(localStorage.getItem(key)); localStorage.setItem(key,"
            + " JSON.stringify({ ...kept, shut: Date.now() - 1000 * arguments[0] }))",
        seconds);
    browser.driver.navigate().refresh();
    browser.until("the timer", () -> browser.maybe("#door").isPresent());
  }

  private static FiringRecord running() {
    return new FiringBook(store, clock)
        .all().stream()
            .filter(f -> f.state() == FiringRecord.State.RUNNING)
            .findFirst()
            .orElseThrow();
  }

  /** Seconds of the pieces in the book. */
  private static List<String> pieces() {
    return running().all(Happening.PIECE).stream().map(told -> told.text()).toList();
  }

  /** What a thumb would miss: buttons, fields and links that stand alone, below 44 px. */
  private static List<?> small() {
    return (List<?>)
        browser.script(
            "return [...document.querySelectorAll('main button, main input:not([type=hidden]), main"
                + " select, main .button, .tabs a, .places a')].filter((e) =>"
                + " e.getClientRects().length && !e.closest('details:not([open])')).map((e) => { const"
                + " b = (e.closest('label') ?? e).getBoundingClientRect(); return [e.outerHTML.slice(0,"
                + " 90), b.height]; }).filter(([, h]) => h < arguments[0] - 0.5)",
            THUMB);
  }

  private static void usable(String name, String mark) {
    browser.usable(
        name, 800, () -> browser.until("its colours", () -> browser.find(mark).isDisplayed()));
  }
}
