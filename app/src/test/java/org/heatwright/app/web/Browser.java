package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.args.AxeRunOptions;
import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.TimeoutException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.events.EventFiringDecorator;
import org.openqa.selenium.support.events.WebDriverListener;
import org.openqa.selenium.support.ui.WebDriverWait;

/** A headless Chromium of the machine, with what the walk needs of it. */
public final class Browser implements AutoCloseable {

  private static final Duration PATIENCE = Duration.ofSeconds(40);

  /** Between two looks; half a second, as is usual, was most of what the walk took. */
  private static final Duration LOOKS = Duration.ofMillis(40);

  private static final Path PICTURES = Path.of("target", "screenshots");
  private static final List<String> BROWSERS =
      List.of("chromium", "chromium-browser", "google-chrome");

  final WebDriver driver;
  final ChromeDriver chrome;
  private final Path downloads;

  /**
   * @param folder for its profile and what it downloads
   */
  Browser(Path folder) {
    try {
      downloads = Files.createDirectories(folder.resolve("downloads"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    ChromeOptions options = new ChromeOptions();
    options.setBinary(program(BROWSERS).toString());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--disable-dev-shm-usage",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--lang=en-GB",
        "--user-data-dir=" + folder.resolve("profile"));
    options.setExperimentalOption(
        "prefs",
        Map.of(
            "download.default_directory",
            downloads.toAbsolutePath().toString(),
            "plugins.always_open_pdf_externally",
            true));
    LoggingPreferences logging = new LoggingPreferences();
    logging.enable(LogType.BROWSER, java.util.logging.Level.ALL);
    options.setCapability("goog:loggingPrefs", logging);
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(program(List.of("chromedriver")).toFile())
            .usingAnyFreePort()
            .build();
    chrome = new ChromeDriver(service, options);
    driver = new EventFiringDecorator<WebDriver>(new IntoTheMiddle()).decorate(chrome);
  }

  /**
   * As a person does, who moves what a bar at the edge covers into sight before touching it, and
   * touches nothing that still moves: a phone's page scrolls by itself to a field in use.
   */
  public final class IntoTheMiddle implements WebDriverListener {
    /** What takes seconds is waited for; a page without scripts is asked for again. */
    @Override
    public void afterGet(WebDriver plain, String address) {
      for (int looks = 1; looks <= 400 && waiting(); looks++) {
        pause();
        if (looks % 50 == 0 && waiting()) {
          chrome.get(address);
        }
      }
    }

    @Override
    public void afterRefresh(WebDriver.Navigation plain) {
      afterGet(chrome, Objects.requireNonNull(chrome.getCurrentUrl()));
    }

    private boolean waiting() {
      return !chrome.findElements(By.cssSelector("main.waiting, .hot[data-later]")).isEmpty();
    }

    @Override
    public void beforeClick(WebElement element) {
      double top = top(element);
      for (int looks = 0; looks < 20; looks++) {
        pause();
        double before = top;
        top = top(element);
        if (top == before) {
          return;
        }
      }
    }

    /** Asked from outside: a page whose own scripts are off has no timers either. */
    private double top(WebElement element) {
      Object top =
          chrome.executeScript(
              """
              const [element] = arguments;
              const bar = document.querySelector('.places');
              const box = () => element.getBoundingClientRect();
              if (bar && !bar.contains(element) && box().bottom > bar.getBoundingClientRect().top
                  && getComputedStyle(bar).position === 'fixed') {
                element.scrollIntoView({block: 'center'});
              }
              return box().top;
              """,
              element);
      return ((Number) Objects.requireNonNull(top)).doubleValue();
    }

    private static void pause() {
      try {
        Thread.sleep(40);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }

  private static Path program(List<String> names) {
    return Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator))
        .flatMap(folder -> names.stream().map(name -> Path.of(folder, name)))
        .filter(Files::isExecutable)
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalStateException(
                    "None of %s is on the path; ./check says what to install.".formatted(names)));
  }

  void size(int width, int height) {
    chrome.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
  }

  void scheme(String lightOrDark) {
    chrome.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            "",
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", lightOrDark))));
  }

  WebElement find(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  List<WebElement> all(String css) {
    return driver.findElements(By.cssSelector(css));
  }

  Optional<WebElement> maybe(String css) {
    return all(css).stream().findFirst();
  }

  String text(String css) {
    return find(css).getText();
  }

  void until(String what, BooleanSupplier holds) {
    try {
      new WebDriverWait(driver, PATIENCE)
          .pollingEvery(LOOKS)
          .withMessage(what)
          .until(d -> now(() -> holds.getAsBoolean() && complete()));
    } catch (TimeoutException e) {
      view("stuck");
      throw new AssertionError(
          "Waited in vain until %s; see stuck.png. The page said: %s".formatted(what, complaints()),
          e);
    }
  }

  /**
   * Whether it holds now. A page, or a part of it, may be replaced between finding and reading it;
   * the browser tells that in two ways. Then it is looked at again.
   */
  private static boolean now(BooleanSupplier holds) {
    try {
      return holds.getAsBoolean();
    } catch (StaleElementReferenceException e) {
      return false;
    } catch (WebDriverException e) {
      if (String.valueOf(e.getMessage()).contains("does not belong to the document")) {
        return false;
      }
      throw e;
    }
  }

  /** Waits until the band of the last edit is drawn. */
  void settled() {
    until(
        "the band is drawn",
        () -> maybe("#progress.working").isEmpty() && maybe("#curve path.band").isPresent());
  }

  /** Whether the page is all there; one that is still coming may hold what is waited for. */
  private boolean complete() {
    return Boolean.TRUE.equals(script("return document.readyState === 'complete'"));
  }

  Object script(String code, Object... arguments) {
    return chrome.executeScript(code, arguments);
  }

  /** Replaces what a text field holds, as typing does. */
  void type(String css, String text) {
    WebElement field = find(css);
    field.clear();
    field.sendKeys(text);
  }

  /** A picture of the whole page, below the fold too. */
  void picture(String name) {
    script("window.scrollTo(0, 0)");
    Number height = (Number) script("return document.documentElement.scrollHeight");
    Number width = (Number) script("return document.documentElement.clientWidth");
    Map<String, Object> shot =
        chrome.executeCdpCommand(
            "Page.captureScreenshot",
            Map.of(
                "optimizeForSpeed",
                true,
                "captureBeyondViewport",
                true,
                "clip",
                Map.of("x", 0, "y", 0, "width", width, "height", height, "scale", 1)));
    save(name, Base64.getDecoder().decode((String) shot.get("data")));
  }

  /** A picture of what is in view. */
  void view(String name) {
    Map<String, Object> shot = chrome.executeCdpCommand("Page.captureScreenshot", Map.of());
    save(name, Base64.getDecoder().decode((String) shot.get("data")));
  }

  private void save(String name, byte[] png) {
    try {
      Files.createDirectories(PICTURES);
      Files.write(PICTURES.resolve(name + ".png"), png);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * What is wrong with the page for people who cannot see, point or hear, by axe. Its older way
   * looks into no frame of another origin, which no page has, and needs no second window.
   */
  List<String> violations() {
    AxeRunOptions options = new AxeRunOptions();
    options.setResultTypes(List.of("violations")); // of what nothing breaks one example is enough
    Results results = new AxeBuilder().withOptions(options).setLegacyMode().analyze(chrome);
    if (results.getPasses().size() <= 10) {
      throw new AssertionError("The checker looked at nothing: " + results.getPasses());
    }
    return results.getViolations().stream()
        .map(rule -> rule.getId() + ": " + rule.getNodes().stream().map(Object::toString).toList())
        .toList();
  }

  /** By how many pixels the page is wider than the window. */
  int tooWide() {
    return ((Number)
            script(
                "return document.documentElement.scrollWidth -"
                    + " document.documentElement.clientWidth"))
        .intValue();
  }

  /** The one file of an ending that was downloaded; waits for it. */
  Path downloaded(String ending) {
    until("the download of a " + ending, () -> downloads(ending).size() == 1);
    return downloads(ending).get(0);
  }

  private List<Path> downloads(String ending) {
    try (Stream<Path> files = Files.list(downloads)) {
      return files.filter(f -> f.getFileName().toString().endsWith(ending)).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  WebElement focused() {
    return driver.switchTo().activeElement();
  }

  /** Goes on with the tab key until it is there. */
  void tabUntil(String what, Predicate<WebElement> there) {
    for (int i = 0; i < 80; i++) {
      if (there.test(focused())) {
        return;
      }
      focused().sendKeys(Keys.TAB);
    }
    throw new AssertionError("The tab key does not lead to " + what + ".");
  }

  /** What the browser had to complain about since the last call. */
  List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::toString)
        .toList();
  }

  @Override
  public void close() {
    driver.quit();
  }

  /**
   * The page is for everybody: on a phone by day and on a desk by night nothing is wider than the
   * screen and nothing is wrong by the accessibility rules. Contrast differs by scheme and layout
   * by width, so one of each tells. Ends by day.
   *
   * @param settled waits until the page is as it will be after a change of size
   */
  void usable(String name, int height, Runnable settled) {
    look(name, "light", 360, height, settled);
    look(name, "dark", 1280, height, settled);
    scheme("light");
  }

  /** As {@link #usable(String, int, Runnable)}, for a page that is there at once. */
  void usable(String name) {
    usable(name, 900, () -> {});
  }

  private void look(String name, String scheme, int width, int height, Runnable settled) {
    size(width, height);
    scheme(scheme);
    settled.run();
    assertThat(tooWide()).as(name + " at " + width).isZero();
    picture("%s-%s-%d".formatted(name, scheme, width));
    assertThat(violations()).as("%s, %s, %d".formatted(name, scheme, width)).isEmpty();
  }
}
