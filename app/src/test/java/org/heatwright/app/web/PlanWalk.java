package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.support.ui.Select;

/** What the walks of the demo studio have in common: a phone that shows the plan, by day. */
abstract class PlanWalk {

  static final Clock CLOCK = Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);
  static final int PHONE = 390;
  static final int DESKTOP = 1280;

  @TempDir static Path folder;
  static DemoBench walk;
  static Store store;
  static Bench bench;
  static Browser browser;

  @BeforeAll
  static void open() {
    walk = DemoBench.open(folder, CLOCK);
    store = walk.store();
    bench = walk.bench();
    browser = walk.browser();
  }

  @AfterAll
  static void close() {
    walk.close();
  }

  @BeforeEach
  void start() {
    browser.size(PHONE, 844);
    browser.scheme("light");
    browser.driver.get(bench.address() + "plan");
    browser.settled();
  }

  @AfterEach
  void nothingToComplainAbout() {
    assertThat(browser.complaints()).isEmpty();
  }

  static void choose(String list, String name) {
    Select select = new Select(browser.find("#" + list));
    if (!select.getFirstSelectedOption().getText().equals(name)) {
      String before = browser.driver.getCurrentUrl();
      select.selectByVisibleText(name);
      browser.until("the choice is taken", () -> !browser.driver.getCurrentUrl().equals(before));
    }
    browser.settled();
  }
}
