package org.heatwright.app.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import org.heatwright.app.store.FiringLog;
import org.heatwright.app.store.Kind;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A session's log is split into its pieces on the bench, and what it tells of them is kept. */
class PiecesBenchTest extends BenchCase {

  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-12-02T12:00:00Z"), ZoneOffset.UTC);

  @BeforeEach
  void open() {
    openStudio(CLOCK);
  }

  @Test
  void theDemoEveningIsSplitKeptAndListed() throws Exception {
    FiringLog log = store.logs("Buoy").get(0);
    String kiln = asked.settled("kiln?name=Buoy");
    String address = "pieces?kiln=Buoy&log=" + log.id();
    assertThat(kiln)
        .contains("href=\"/" + address.replace("&", "&amp;") + "\"")
        .contains(
            "13 openings of the door are told in this log. The forecast takes them and usual cold"
                + " pieces into account, and so does learning.")
        .contains("door open, 13 times")
        .doesNotContain("door-open brooch");
    String page = asked.get(address + "&work=Evening+enamel").body();
    assertThat(page)
        .contains("12 pieces in Evening of brooches", "The display falls", "brooch 1, coat 1")
        .contains("Keep what it tells of named pieces", "Nothing was kept of a piece yet");

    Map<String, String> form = Map.of("kiln", "Buoy", "log", log.id(), "work", "Evening enamel");
    assertThat(asked.post("pieces", form).headers().firstValue("Location").orElseThrow())
        .isEqualTo("/pieces?unit=C#kept");
    asked.post("pieces", form);
    assertThat(store.pieces()).hasSize(12);
    assertThat(asked.get("pieces").body())
        .contains("brooch 1: 2 firings, coats 1 to 2", "20 Nov 2026")
        .doesNotContain("Nothing was kept");
    assertThat(asked.get("firings").body()).contains("href=\"/pieces\"");
    assertThat(asked.get("pieces").body()).contains(" °C", "In °F instead");
    assertThat(asked.get("pieces?unit=F").body())
        .containsPattern("1[45]\\d\\d °F")
        .doesNotContainPattern("\\d (°C|K)\\b");
    assertThat(asked.get(address + "&unit=F").body())
        .containsPattern("hottest 1[45]\\d\\d °F")
        .contains("value=\"F\" checked")
        .doesNotContainPattern("\\d (°C|K)\\b");
  }

  /**
   * The swing of Buoy's switch is no opening, whether events tell the openings or not. That nothing
   * went in at the last one only an event could tell.
   */
  @Test
  void piecesAreReadOffADisplayThatSwings() throws Exception {
    FiringLog told = store.logs("Buoy").get(0);
    FiringLog silent =
        store.keepLog(
            "Buoy",
            "silent",
            told.date(),
            told.csv().replaceAll("(?m),\"?door.*$", ","),
            told.schedule(),
            "");
    assertThat(silent.csv()).doesNotContain("door-open");
    assertThat(asked.get("pieces?kiln=Buoy&log=" + silent.id()).body())
        .contains("13 pieces in silent");
  }

  @Test
  void aLogWithoutADoorAndAShelfWithoutEnamelSaySo() throws Exception {
    String dry = "pieces?kiln=Anchor&log=" + store.logs("Anchor").get(0).id();
    assertThat(asked.get(dry).body())
        .contains("No opening of the door shows: nothing fell by 12 K and came back");
    assertThat(asked.get(dry + "&unit=F").body()).contains("nothing fell by 22 °F and came back");
    assertThat(asked.get("pieces?kiln=Anchor&log=none").statusCode()).isEqualTo(200);
    store.all(Kind.WORK).forEach(work -> store.away().putAway("work", work.id()));
    assertThat(asked.get(dry).body()).contains("There is no enamel on the shelf to judge it by");
  }
}
