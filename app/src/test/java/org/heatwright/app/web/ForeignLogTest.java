package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.heatwright.app.demo.DemoStudio;
import org.heatwright.app.files.LogFile;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Store;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A log of some logger is brought to a kiln: shown as read, corrected, agreed to, remembered. */
class ForeignLogTest {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T15:00:00Z"), ZoneOffset.UTC);

  private Store store;
  private KilnDesk desk;

  @BeforeEach
  void open() {
    store = Store.temporary(CLOCK);
    DemoStudio.fill(store);
    desk = new KilnDesk(store, CLOCK);
  }

  @AfterEach
  void close() {
    store.close();
  }

  /** Semicolons, decimal commas, °F, two-digit years, and a gap of an hour. */
  private static String log(int day) {
    StringBuilder rows = new StringBuilder("Date;Time;Kiln °F;Duty\n");
    for (int minute = 0; minute < 240; minute += 2) {
      if (minute >= 100 && minute < 160) {
        continue;
      }
      rows.append(
          String.format(
                  Locale.ROOT,
                  "%02d.11.26;%02d:%02d;%.1f;%d%n",
                  day,
                  8 + minute / 60,
                  minute % 60,
                  68 + 4.5 * minute,
                  55)
              .replace('.', ',')
              .replaceFirst(",11,26", ".11.26"));
    }
    return rows.toString();
  }

  private Map<String, String> form(String csv) {
    Map<String, String> form = new HashMap<>();
    form.put("csv", csv);
    form.put("logname", "Test rise");
    form.put("chosen", "log:" + store.logs("Anchor").get(0).id());
    return form;
  }

  @Test
  void itIsShownAsReadAndKeptOnceAgreedTo() {
    Map<String, String> form = form(log(20));
    KilnDesk.Brought shown = desk.bring("Anchor", form);
    assertThat(shown.log()).isEmpty();
    assertThat(shown.bringing().error()).isEmpty();
    KilnPage.Recognised read = shown.bringing().recognised().orElseThrow();
    assertThat(read.told()).startsWith("90 rows over 3:58 h, from 68 °F to");
    assertThat(read.head()).containsExactly("1: Date", "2: Time", "3: Kiln °F", "4: Duty");
    assertThat(read.rows().get(1).read()).isEqualTo("0:02 h, 77 °F");
    assertThat(read.decisions())
        .anySatisfy(d -> assertThat(d.name() + d.word()).isEqualTo("as-decimalcomma"))
        .anySatisfy(d -> assertThat(d.name() + d.word()).isEqualTo("as-unitfahrenheit"))
        .anySatisfy(d -> assertThat(d.name() + d.word()).isEqualTo("as-chamber3"));

    form.put("agreed", "1");
    form.put("said", read.said());
    read.decisions().forEach(d -> form.put(d.name(), d.word()));
    read.decisions().forEach(d -> form.put(d.was(), d.word()));
    KilnDesk.Brought brought = desk.bring("Anchor", form);
    assertThat(brought.bringing().error()).isEmpty();
    FiringLog kept = brought.log().orElseThrow();
    assertThat(kept.date()).isEqualTo(LocalDate.of(2026, 11, 20));
    LogFile.Log ours = LogFile.read(kept.csv(), "kept");
    assertThat(ours.rows()).hasSize(90);
    assertThat(ours.rows().get(89).seconds()).isEqualTo(238 * 60);
    assertThat(ours.rows().get(0).chamberCelsius()).isBetween(19.9, 20.1);
  }

  @Test
  void whatIsCorrectedIsReadAgainAndRememberedForTheNextOfItsForm() {
    Map<String, String> form = form(log(20));
    KilnPage.Recognised first = desk.bring("Anchor", form).bringing().recognised().orElseThrow();
    form.put("said", first.said());
    first.decisions().forEach(d -> form.put(d.was(), d.word()));
    first.decisions().forEach(d -> form.put(d.name(), d.word()));
    form.put("as-unit", "celsius");
    KilnPage.Recognised again = desk.bring("Anchor", form).bringing().recognised().orElseThrow();
    assertThat(again.said()).isEqualTo("unit=celsius");
    assertThat(again.rows().get(1).read()).isEqualTo("0:02 h, 77 °C");
    form.put("said", again.said());
    form.put("was-unit", "celsius");
    form.put("agreed", "1");
    KilnDesk.Brought brought = desk.bring("Anchor", form);
    assertThat(brought.bringing().error()).isEmpty();
    assertThat(brought.log()).isPresent();

    KilnPage.Recognised next =
        desk.bring("Anchor", form(log(21))).bringing().recognised().orElseThrow();
    assertThat(next.said()).isEqualTo("unit=celsius");
    assertThat(next.rows().get(1).read()).isEqualTo("0:02 h, 77 °C");
  }

  @Test
  void whatIsNoLogIsToldInOneSentenceAndNothingIsLost() {
    for (String text :
        new String[] {"hello", "a;b\nc;d\n", "time,chamber_c\n2026,nonsense\n", " "}) {
      KilnDesk.Brought brought = desk.bring("Anchor", form(text));
      assertThat(brought.log()).as(text).isEmpty();
      assertThat(brought.bringing().error()).as(text).startsWith("The log");
      assertThat(brought.bringing().csv()).isEqualTo(text);
    }
  }
}
