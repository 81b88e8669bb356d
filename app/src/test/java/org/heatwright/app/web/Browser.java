package org.heatwright.app.web;

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
import java.util.Optional;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.TimeoutException;
import org.openqa.selenium.WebDriver;
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

  private static final Duration PATIENCE = Duration.ofSeconds(15);

  /** Between two looks; half a second, as is usual, was most of what the walk took. */
  private static final Duration LOOKS = Duration.ofMillis(40);

  private static final List<String> BROWSERS =
      List.of("chromium", "chromium-browser", "google-chrome");

  final WebDriver driver;
  final ChromeDriver chrome;
  private final Path pictures;

  Browser(Path profile, Path downloads, Path pictures) {
    this.pictures = pictures;
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
        "--user-data-dir=" + profile);
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

  /** As a person does, who moves what a bar at the edge covers into sight before touching it. */
  public final class IntoTheMiddle implements WebDriverListener {
    @Override
    public void beforeClick(WebElement element) {
      chrome.executeScript(
          "const bar = document.querySelector('.places'); const box ="
              + " arguments[0].getBoundingClientRect(); if (bar && !bar.contains(arguments[0]) &&"
              + " box.bottom > bar.getBoundingClientRect().top && getComputedStyle(bar).position"
              + " === 'fixed') arguments[0].scrollIntoView({block: 'center'})",
          element);
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

  void until(String what, java.util.function.BooleanSupplier holds) {
    try {
      // A part of the page may be replaced between finding it and reading it: look again.
      new WebDriverWait(driver, PATIENCE)
          .ignoring(StaleElementReferenceException.class)
          .pollingEvery(LOOKS)
          .withMessage(what)
          .until(d -> holds.getAsBoolean());
    } catch (TimeoutException e) {
      view("stuck");
      throw new AssertionError(
          "Waited in vain until %s; see stuck.png. The page said: %s".formatted(what, complaints()),
          e);
    }
  }

  /** Waits until the band of the last edit is drawn. */
  void settled() {
    until(
        "the band is drawn",
        () ->
            maybe("#progress.working").isEmpty()
                && maybe("#curve path.band").isPresent()
                && Boolean.TRUE.equals(script("return document.readyState === 'complete'")));
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
      Files.createDirectories(pictures);
      Files.write(pictures.resolve(name + ".png"), png);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What axe finds; of the rules that nothing breaks one example each, not every element. */
  Results axe() {
    AxeRunOptions options = new AxeRunOptions();
    options.setResultTypes(List.of("violations"));
    return new AxeBuilder().withOptions(options).analyze(driver);
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
}
